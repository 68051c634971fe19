/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The work of the workbench without a window. */
@Command(name = "faultwright",
        description = "Checks repair procedures and turns them into bench cards and trees.",
        subcommands = {CheckCommand.class, NewCommand.class, PublishCommand.class, ExplainCommand.class, FormatCommand.class, FixCommand.class,
            OrderCommand.class, DraftCommand.class, CompareCommand.class, TallyCommand.class, ServeCommand.class},
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footer = {"", "Exit status: 0 nothing found, 1 something found, 2 the call was wrong or a file could not be read or written.",
            "Local codes, the maker's instructions and licensed practice come first."})
public final class Faultwright implements Runnable {
    /** Nothing to report. */
    static final int CLEAN = 0;
    /** The text has findings. */
    static final int FINDINGS = 1;
    /** The call itself was wrong, or a file could not be read or written. */
    static final int MISUSE = 2;

    @Spec
    private CommandSpec spec;

    private Faultwright() {
    }

    public static void main(String[] arguments) {
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int status = run(out, err, arguments);
        out.flush();
        System.exit(status);
    }

    /** Carries out one call. @return the exit status */
    public static int run(PrintWriter out, PrintWriter err, String... arguments) {
        CommandLine commandLine = new CommandLine(new Faultwright());
        commandLine.setOut(out);
        commandLine.setErr(err);
        commandLine.setCaseInsensitiveEnumValuesAllowed(true);
        commandLine.setParameterExceptionHandler(Faultwright::misuse);
        commandLine.setExecutionExceptionHandler((failure, command, parsed) -> failed(failure, command));
        int status = commandLine.execute(arguments);
        out.flush();
        err.flush();
        return status;
    }

    private static int misuse(ParameterException problem, String[] arguments) {
        CommandLine command = problem.getCommandLine();
        String asked = command.getCommandSpec().qualifiedName();
        command.getErr().println("faultwright: " + sentence(reason(problem)) + " See " + asked + " --help.");
        return MISUSE;
    }

    private static String reason(ParameterException problem) {
        if (problem instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
            String word = unmatched.getUnmatched().get(0);
            boolean first = problem.getCommandLine().getParent() == null && !word.startsWith("-");
            return first ? "There is no command \"" + word + "\"; say check, new, publish, explain, fix, order, draft, compare, tally, format or serve"
                    : "\"" + word + "\" is not understood here";
        }
        return problem.getMessage();
    }

    private static int failed(Exception failure, CommandLine command) {
        String what = failure instanceof CannotProceed
                ? failure.getMessage()
                : "This stopped with " + failure + "; please report it with the text it was given.";
        command.getErr().println("faultwright: " + sentence(what));
        return MISUSE;
    }

    private static String sentence(String message) {
        String line = message.strip().replaceAll("\\s*\\R\\s*", " ");
        return line.endsWith(".") || line.endsWith("?") ? line : line + ".";
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: check, new, publish, explain, order, draft, compare, format or serve.");
    }
}

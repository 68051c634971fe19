/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;
import picocli.CommandLine;

/** The work of the workbench without a window. */
@Command(name = "faultwright",
        description = "Checks repair procedures and turns them into bench cards and trees.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footer = {"", "Exit status: 0 nothing found, 1 something found (check: a warning or more), 2 the call was wrong or a file could not be read or written.",
            "Local codes, the maker's instructions and licensed practice come first."})
public final class Faultwright implements Runnable {
    /** Nothing to report. */
    static final int CLEAN = 0;
    /** The text has findings. */
    static final int FINDINGS = 1;
    /** The call itself was wrong, or a file could not be read or written. */
    static final int MISUSE = 2;

    /** In the order of the help. A class is loaded when its command is put together. */
    private static final Map<String, Supplier<Class<?>>> COMMANDS = new LinkedHashMap<>();

    static {
        COMMANDS.put("check", () -> CheckCommand.class);
        COMMANDS.put("new", () -> NewCommand.class);
        COMMANDS.put("publish", () -> PublishCommand.class);
        COMMANDS.put("explain", () -> ExplainCommand.class);
        COMMANDS.put("format", () -> FormatCommand.class);
        COMMANDS.put("fix", () -> FixCommand.class);
        COMMANDS.put("order", () -> OrderCommand.class);
        COMMANDS.put("draft", () -> DraftCommand.class);
        COMMANDS.put("compare", () -> CompareCommand.class);
        COMMANDS.put("tally", () -> TallyCommand.class);
        COMMANDS.put("serve", () -> ServeCommand.class);
    }

    @Spec
    private CommandSpec spec;

    private Faultwright() {
    }

    public static void main(String[] arguments) {
        FailureLog.useFromNowOn();
        Output printed = new Output(new FileOutputStream(FileDescriptor.out));
        PrintWriter out = new PrintWriter(new BufferedOutputStream(printed), false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int status = run(out, err, arguments);
        System.exit(printed.finish(status, err));
    }

    /** Where the output goes; a disk that is full is no end in good order. */
    static final class Output extends FilterOutputStream {
        private String refused = "";

        Output(OutputStream to) {
            super(to);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            try {
                out.write(bytes, from, length);
            } catch (IOException failed) {
                refused = String.valueOf(failed.getMessage());
                throw failed;
            }
        }

        /** @return the exit status given, or that of a failure where not everything was printed; whoever reads no further knows that he did */
        int finish(int status, PrintWriter err) {
            if (refused.isEmpty() || refused.contains("Broken pipe")) {
                return status;
            }
            err.println("faultwright: " + sentence("What was to be printed is not complete (" + refused
                    + "); make room, or print it to another place, and call again"));
            return MISUSE;
        }
    }

    /** Carries out one call. @return the exit status */
    public static int run(PrintWriter out, PrintWriter err, String... given) {
        String[] arguments = asked(given);
        CommandLine commandLine = commandLine(arguments);
        commandLine.setOut(out);
        commandLine.setErr(err);
        commandLine.setCaseInsensitiveEnumValuesAllowed(true);
        commandLine.registerConverter(LocalDate.class, Faultwright::day);
        commandLine.setParameterExceptionHandler(Faultwright::misuse);
        commandLine.setExecutionExceptionHandler((failure, command, parsed) -> failed(failure, command));
        int status = commandLine.execute(arguments);
        out.flush();
        err.flush();
        return status;
    }

    /** Who asks for {@code help}, or for {@code help publish}, gets it. */
    private static String[] asked(String... given) {
        if (given.length == 0 || !given[0].equals("help")) {
            return given;
        }
        Stream<String> behind = Arrays.stream(given).skip(1);
        boolean known = given.length == 1 || COMMANDS.containsKey(given[1]);
        return (known ? Stream.concat(behind, Stream.of("--help")) : behind).toArray(String[]::new);
    }

    private static String commands() {
        List<String> names = List.copyOf(COMMANDS.keySet());
        return String.join(", ", names.subList(0, names.size() - 1)) + " or " + names.get(names.size() - 1);
    }

    /** With the command that is called, or with all of them where none is: to put one together takes as long as to read a short text. */
    static CommandLine commandLine(String... arguments) {
        CommandLine commandLine = new CommandLine(new Faultwright());
        Set<String> called = arguments.length > 0 && COMMANDS.containsKey(arguments[0]) ? Set.of(arguments[0]) : COMMANDS.keySet();
        called.forEach(name -> commandLine.addSubcommand(name, COMMANDS.get(name).get()));
        return commandLine;
    }

    private static LocalDate day(String written) {
        try {
            return LocalDate.parse(written);
        } catch (DateTimeParseException none) {
            throw new TypeConversionException("\"" + written + "\" is no day; write year, month and day, such as 2026-01-31");
        }
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
            return first ? "There is no command \"" + word + "\"; say " + commands()
                    : "\"" + word + "\" is not understood here";
        }
        return problem.getMessage();
    }

    private static int failed(Exception failure, CommandLine command) {
        boolean understood = failure instanceof CannotProceed;
        if (!understood) {
            FailureLog.tell("faultwright " + command.getCommandName() + " stopped", failure);
        }
        String what = understood ? failure.getMessage() : "This stopped with " + failure + "; please report it with the text it was given"
                + FailureLog.file().map(log -> " and the file " + log).orElse("") + ".";
        command.getErr().println("faultwright: " + sentence(what));
        return MISUSE;
    }

    private static String sentence(String message) {
        String line = message.strip().replaceAll("\\s*\\R\\s*", " ");
        return line.endsWith(".") || line.endsWith("?") ? line : line + ".";
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: " + commands() + ".");
    }
}

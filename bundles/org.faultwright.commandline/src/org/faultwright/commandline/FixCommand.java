/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.checking.FixRun;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.procedure.ReadingProblem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "fix", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Lists the fixes of what check finds, and applies them when told which.",
            "A fix is listed only when it was tried: its finding is gone, and a full check finds nothing new.",
            "  faultwright fix FILE                      lists them",
            "  faultwright fix --all FILE                applies the first of each finding",
            "  faultwright fix --rule missing-unit FILE  applies those of one rule",
            "  faultwright fix --at 12 FILE              applies the one in line 12",
            "  faultwright fix --at 12:9 FILE            and in column 9, if there are more"})
final class FixCommand implements Callable<Integer> {
    private static final Pattern PLACE = Pattern.compile("([1-9]\\d{0,6})(?::([1-9]\\d{0,6}))?");

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @Option(names = "--all", description = "Apply the first fix of every finding that has one.")
    private boolean all;

    @Option(names = "--rule", paramLabel = "RULE", description = "Apply the first fix of every finding of this rule.")
    private String rule;

    @Option(names = "--at", paramLabel = "LINE[:COLUMN]", description = "Apply the fix of the finding at this place; for one file.")
    private String place;

    @Option(names = "--choose", paramLabel = "NUMBER", description = "Where one finding has several fixes, apply this one (default: 1).")
    private Integer number;

    @Option(names = "--dry-run", description = "Show what would change, and change nothing.")
    private boolean dryRun;

    @Option(names = "--as-of", paramLabel = "DATE", description = "Hold calibration dates against this day, as in check.")
    private LocalDate today;

    @Spec
    private CommandSpec spec;

    private boolean unread;

    @Override
    public Integer call() {
        refuseWhatContradicts();
        List<Path> files = ProcedureFiles.below(named);
        if (place != null && files.size() > 1) {
            throw new CannotProceed("--at names a place in one file, and here are " + files.size() + "; name one file.");
        }
        int made = 0;
        for (Path file : files) {
            made += isListing() ? list(file) : apply(file);
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println(Phrases.counted(made, "fix", "fixes") + (isListing() ? " offered." : dryRun ? " would be applied." : " applied."));
        return unread || (isListing() || dryRun) && made > 0 || place != null && made == 0 ? Faultwright.FINDINGS : Faultwright.CLEAN;
    }

    private boolean isListing() {
        return !all && rule == null && place == null;
    }

    private void refuseWhatContradicts() {
        if ((all ? 1 : 0) + (rule != null ? 1 : 0) + (place != null ? 1 : 0) > 1) {
            throw new CannotProceed("Say one of --all, --rule and --at.");
        }
        if (rule != null && RulePages.page(rule).isEmpty()) {
            throw new CannotProceed("There is no rule \"" + rule + "\"" + RuleIndex.near(rule).stream().findFirst()
                    .map(near -> "; did you mean \"" + near + "\"?").orElse("; faultwright explain lists them."));
        }
        if (place != null && !PLACE.matcher(place).matches()) {
            throw new CannotProceed("\"" + place + "\" is no place; write a line, such as 12, or a line and a column, such as 12:9.");
        }
        if (number != null && number < 1) {
            throw new CannotProceed("--choose counts from 1.");
        }
        if (isListing() && (number != null || dryRun)) {
            throw new CannotProceed((number != null ? "--choose" : "--dry-run") + " needs to know which fixes are meant: say --all, --rule or --at too.");
        }
    }

    private int list(Path file) {
        PrintWriter out = spec.commandLine().getOut();
        FixRun text = run(file);
        int listed = 0;
        for (Finding finding : text.own()) {
            List<Fix> fixes = text.holding(finding);
            if (!fixes.isEmpty()) {
                out.println(finding.at() + " " + finding.rule() + ": " + finding.message());
            }
            for (int i = 0; i < fixes.size(); i++) {
                out.println("  " + (fixes.size() > 1 ? i + 1 + ". " : "") + fixes.get(i).title());
            }
            listed += fixes.size();
        }
        tellUnread(file, text);
        out.flush();
        return listed;
    }

    /** One after the other: each is tried on the text that the one before it left. */
    private int apply(Path file) {
        FixRun text = run(file);
        PrintWriter out = spec.commandLine().getOut();
        int made = 0;
        boolean more = true;
        while (more) {
            String before = text.now().content();
            Optional<FixRun.AppliedFix> done = text.next(this::isWanted, number == null ? 1 : number);
            if (done.isPresent()) {
                made++;
                out.println(done.get().finding().at() + " " + done.get().finding().rule() + ": " + done.get().fix().title());
                LineChanges.between(before, text.now().content()).forEach(out::println);
            }
            more = done.isPresent() && place == null;
        }
        if (made > 0 && !dryRun) {
            TextFiles.replace(file, text.now().content());
        }
        tellUnread(file, text);
        out.flush();
        return made;
    }

    /** Where words cannot be read, that no fix is offered says nothing of what stands there. */
    private void tellUnread(Path file, FixRun text) {
        List<ReadingProblem> problems = text.unread();
        if (!problems.isEmpty()) {
            unread = true;
            spec.commandLine().getOut().println(file + ", line " + problems.get(0).at().line() + ": here"
                    + (problems.size() > 1 ? " and in " + Phrases.counted(problems.size() - 1, "other place", "other places") : "")
                    + " words cannot be read, so that not every fix is known; \"faultwright check\" says what is wrong with them.");
        }
    }

    private boolean isWanted(Finding finding) {
        if (rule != null) {
            return finding.rule().equals(rule);
        }
        if (place == null) {
            return true;
        }
        String[] parts = place.split(":");
        return finding.at().line() == Integer.parseInt(parts[0])
                && (parts.length == 1 || finding.at().column() == Integer.parseInt(parts[1]));
    }

    private FixRun run(Path file) {
        FileChecker checking = new FileChecker(Optional.ofNullable(today));
        return checking.fixing(checking.read(file));
    }
}

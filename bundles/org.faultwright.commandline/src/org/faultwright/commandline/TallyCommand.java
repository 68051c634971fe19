/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.analysis.walk.Tally;
import org.faultwright.analysis.walk.TallyEdits;
import org.faultwright.analysis.walk.WalkRecord;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.publish.bench.RecordFile;
import org.faultwright.publish.bench.RecordRefused;
import org.faultwright.publish.page.PlainText;
import org.faultwright.quantity.Exact;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "tally", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Adds up the records that bench pages saved: cases of each fault, times of the steps, results that nobody expected.",
            "It shows what the text could say instead, and changes it only with --write.",
            "  faultwright tally records --for OllenbyFaintLabels.procedure"})
final class TallyCommand implements Callable<Integer> {
    enum Part { CASES, TAKES }

    @Parameters(paramLabel = "RECORDS", arity = "1..*", description = "Records, or folders with files ending in .record.json.")
    private List<Path> named;

    @Option(names = "--for", paramLabel = "PROCEDURE", required = true, description = "The procedure that they were walked by.")
    private Path file;

    @Option(names = "--only", paramLabel = "PART", description = "Propose cases alone, or takes alone.")
    private Part only;

    @Option(names = "--write", description = "Change the text as shown, after a full check of what it becomes.")
    private boolean write;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        FileChecker checking = new FileChecker(Optional.empty());
        if (!(checking.read(file) instanceof Procedure procedure)) {
            throw new CannotProceed(file + " is a library; name a procedure.");
        }
        List<Path> files = files();
        List<WalkRecord> records = new ArrayList<>();
        int refused = read(files, procedure, records);
        if (records.isEmpty()) {
            throw new CannotProceed(files.isEmpty() ? "There is no file ending in .record.json there; name the records, or their folder."
                    : "None of the " + files.size() + " files is a record that can be counted.");
        }
        PrintWriter out = spec.commandLine().getOut();
        Tally tally = new Tally(procedure, records);
        report(tally, out);
        List<Fix> edits = new ArrayList<>(only == Part.TAKES ? List.of() : TallyEdits.cases(tally));
        edits.addAll(only == Part.CASES ? List.of() : TallyEdits.takes(tally));
        propose(procedure, edits, out);
        if (only != Part.CASES && TallyEdits.shortens(tally) && !edits.isEmpty()) {
            out.println("A step that took less than the text says may have been done without its wait or its care: ask before you shorten it.");
        }
        out.flush();
        if (write && !edits.isEmpty()) {
            if (refused > 0) {
                throw new CannotProceed("Nothing is written, because " + Phrases.counted(refused, "record was", "records were")
                        + " refused; take them out and write then.");
            }
            write(checking, procedure, edits, out);
        }
        return refused > 0 ? Faultwright.MISUSE : edits.isEmpty() || write ? Faultwright.CLEAN : Faultwright.FINDINGS;
    }

    // ---- reading

    private List<Path> files() {
        List<Path> files = new ArrayList<>();
        for (Path one : named) {
            if (!Files.isDirectory(one)) {
                files.add(one);
                continue;
            }
            try (Stream<Path> inside = Files.list(one)) {
                inside.filter(path -> path.toString().endsWith(".record.json")).sorted().forEach(files::add);
            } catch (IOException unreadable) {
                throw new CannotProceed("The folder " + one + " cannot be read (" + unreadable.getMessage() + ").");
            }
        }
        return files;
    }

    /** @return how many were refused, each with its sentence */
    private int read(List<Path> files, Procedure procedure, List<WalkRecord> into) {
        Map<String, Path> counted = new HashMap<>();
        int refused = 0;
        for (Path one : files) {
            try {
                WalkRecord record = RecordFile.read(content(one), procedure);
                Path before = counted.putIfAbsent(record.id(), one);
                if (before == null) {
                    into.add(record);
                } else {
                    refused += refuse(one, "it is the same record as " + before);
                }
            } catch (RecordRefused reason) {
                refused += refuse(one, reason.getMessage());
            }
        }
        return refused;
    }

    private int refuse(Path one, String reason) {
        spec.commandLine().getErr().println(one + " is not counted: " + PlainText.line(reason) + ".");
        return 1;
    }

    private static String content(Path one) throws RecordRefused {
        try {
            if (Files.exists(one) && !Files.isRegularFile(one)) {
                throw new RecordRefused("it is no file with an end"); // a pipe or a device would be read for ever
            }
            if (Files.size(one) > RecordFile.LARGEST) {
                throw new RecordRefused("it is too large to be a record of a walk");
            }
            return new String(Files.readAllBytes(one), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw CannotProceed.unreadable(one, unreadable);
        }
    }

    // ---- telling

    private static void report(Tally tally, PrintWriter out) {
        out.println(Phrases.counted(tally.records(), "record", "records")
                + (tally.unfinished() > 0 ? ", " + tally.unfinished() + " of them not finished: they count for times alone" : "") + ".");
        if (!tally.cases().isEmpty()) {
            out.println();
            out.println("Cases: text + records, and how likely each is after both");
            tally.cases().forEach(one -> out.println(String.format(Locale.ROOT, "  %-28s %8s + %-6s %s", one.fault().name(), one.prior(),
                    Exact.of(one.met().toDecimal(1)), tally.shareOf(one).map(share -> String.format(Locale.ROOT, "%.0f %% \u00B1 %.0f", 100 * share[0], 100 * share[1])).orElse(""))));
            out.println("  The cases of the text are the prior (Dirichlet; Gelman et al., Bayesian Data Analysis, 3.4); \u00B1 is one standard deviation.");
        }
        if (!tally.unfound().isEmpty()) {
            out.println();
            out.println("Ended without a fault: " + tally.unfound().entrySet().stream().map(one -> one.getKey().name() + " " + one.getValue())
                    .collect(Collectors.joining(", ")));
        }
        out.println();
        out.println("Times: median of all visits, and what the text says");
        tally.spent().forEach(one -> out.println(String.format(Locale.ROOT, "  %-28s %8s of %-5d %s", one.step().name(),
                TimeText.written(Exact.of(one.median())), one.visits(), one.step().frame().takes().map(takes -> takes.value().spelling()).orElse("nothing"))));
        if (tally.doubtful() > 0) {
            out.println();
            out.println(Phrases.counted(tally.doubtful(), "reading was", "readings were") + " too near a limit to decide.");
        }
        if (!tally.unexpected().isEmpty()) {
            out.println();
            out.println("Results that the fault table does not expect");
            tally.unexpected().forEach(one -> out.println("  " + one.fault().name() + " showed " + one.result().step().name() + " " + one.result().outcome()
                    + " in " + Phrases.counted(one.records(), "record", "records")));
        }
    }

    private void propose(Procedure procedure, List<Fix> edits, PrintWriter out) {
        out.println();
        if (edits.isEmpty()) {
            out.println("The text needs no change by these records.");
            return;
        }
        out.println(write ? "Changes" : "The text could say");
        for (Fix edit : edits) {
            out.println("  " + edit.title());
            LineChanges.between(procedure.source().content(), edit.applied()).forEach(line -> out.println("  " + line));
        }
        if (!write) {
            out.println("Nothing is changed; --write changes it. Records of the text as it is now count no longer then.");
        }
    }

    // ---- writing

    private void write(FileChecker checking, Procedure procedure, List<Fix> edits, PrintWriter out) {
        String changed = new Fix("", edits.stream().flatMap(edit -> edit.edits().stream()).toList()).applied();
        Document after = checking.read(new SourceText(procedure.source().name(), changed));
        Map<String, Long> before = serious(checking.all(procedure));
        Map<String, Long> now = serious(checking.all(after));
        List<String> fresh = now.entrySet().stream().filter(one -> one.getValue() > before.getOrDefault(one.getKey(), 0L)).map(Map.Entry::getKey).toList();
        if (!fresh.isEmpty()) {
            throw new CannotProceed("Nothing is written, because the check would then find: " + String.join(" ", fresh)
                    + " Write a part with --only, or change the text by hand.");
        }
        TextFiles.replace(file, changed);
        out.println(file + " changed. Check it, raise its revision, and publish it anew.");
    }

    private static Map<String, Long> serious(List<Finding> findings) {
        return findings.stream().filter(finding -> finding.severity() != Severity.ADVICE)
                .collect(Collectors.groupingBy(finding -> finding.rule() + ": " + finding.message(), TreeMap::new, Collectors.counting()));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.checking.RulePage;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.language.reference.LanguageReference;
import org.faultwright.language.reference.ReferenceEntry;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.measure.BudgetLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "explain", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Explains a rule, a word of the language, or the limits of a step with every number behind them.",
            "  faultwright explain                     the rules and the words, listed",
            "  faultwright explain hole-between-bands  the page of a rule",
            "  faultwright explain needs               what the reference says of a word",
            "  faultwright explain FILE STEP           the budget of a reading or calculation"})
final class ExplainCommand implements Callable<Integer> {
    private static final int WIDEST = 100;

    @Parameters(paramLabel = "WHAT", arity = "0..2", description = "A rule, a word of the language, or a file and the name of a step in it.")
    private List<String> what = List.of();

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        switch (what.size()) {
            case 0 -> list(out);
            case 1 -> page(what.get(0), out);
            default -> step(Path.of(what.get(0)), what.get(1), out);
        }
        return Faultwright.CLEAN;
    }

    private static void list(PrintWriter out) {
        RuleIndex.byGroup().forEach((group, headers) -> {
            out.println(group.title());
            int widest = headers.stream().mapToInt(header -> header.id().length()).max().orElse(0);
            for (RuleHeader header : headers) {
                out.printf("  %-" + widest + "s  %s%n", header.id(), header.summary());
            }
            out.println();
        });
        out.println("Words of the language");
        StringBuilder line = new StringBuilder(" ");
        for (String word : LanguageReference.words()) {
            if (line.length() + word.length() > WIDEST) {
                out.println(line);
                line.setLength(1);
            }
            line.append(' ').append(word);
        }
        out.println(line);
    }

    private static void page(String word, PrintWriter out) {
        Optional<RulePage> rule = RulePages.page(word);
        List<ReferenceEntry> entries = LanguageReference.about(word);
        if (rule.isEmpty() && entries.isEmpty()) {
            throw new CannotProceed(Files.exists(Path.of(word))
                    ? "Name a step of " + word + " as well, such as: faultwright explain " + word + " HeadSupply."
                    : unknown(word));
        }
        rule.ifPresent(page -> out.println(page.markdown()));
        entries.forEach(entry -> out.println(entry.page()));
    }

    private static String unknown(String word) {
        List<String> near = Stream.concat(LanguageReference.near(word).stream(), RuleIndex.near(word).stream()).limit(2).toList();
        return "There is no rule and no word of the language called \"" + word + "\""
                + (near.isEmpty() ? "; faultwright explain lists them."
                        : "; did you mean " + String.join(" or ", near.stream().map(one -> '"' + one + '"').toList()) + "?");
    }

    private static void step(Path file, String name, PrintWriter out) {
        if (!Files.isReadable(file)) {
            throw CannotProceed.missing(file);
        }
        Document document = new FileChecker(Optional.empty()).read(file);
        Step step = document.graphs().stream().flatMap(graph -> graph.steps().stream())
                .filter(one -> one.name().text().equals(name)).findFirst()
                .orElseThrow(() -> new CannotProceed("There is no step \"" + name + "\" in " + file + "."));
        List<BudgetLine> lines = lines(document, step, file);
        out.println(name + "  " + step.title());
        lines.forEach(line -> out.println(text(line)));
    }

    private static List<BudgetLine> lines(Document document, Step step, Path file) {
        if (step instanceof Step.Measure measure) {
            return LimitStudy.of(document, measure).map(LimitStudy::explain).orElseThrow(() -> new CannotProceed(step.name()
                    + " has no limit that can be held against an instrument; see faultwright check " + file + "."));
        }
        if (step instanceof Step.Calculate calculate) {
            return ComputedStudy.of(document, calculate).map(ComputedStudy::explain).orElseThrow(() -> new CannotProceed(step.name()
                    + " computes nothing that is held against a limit; see faultwright check " + file + "."));
        }
        throw new CannotProceed(step.name() + " reads and computes nothing; name a \"measure\" or \"calculate\" step.");
    }

    private static String text(BudgetLine line) {
        StringBuilder text = new StringBuilder(String.format("  %-34s %s", line.label(), line.value()));
        if (!line.formula().isBlank()) {
            text.append(System.lineSeparator()).append(" ".repeat(37)).append(line.formula());
        }
        if (!line.clause().isBlank()) {
            text.append(line.formula().isBlank() ? System.lineSeparator() + " ".repeat(37) : "  ")
                    .append('[').append(line.clause()).append(']');
        }
        return text.toString();
    }
}

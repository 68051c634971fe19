/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.publish.ProcedureFolder.CheckedLibrary;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;

/** All procedures together: findings by rule, their libraries, units, documents. */
final class QualityOverview {
    private static final int MOST_BITS = 40;

    private QualityOverview() {
    }

    static void add(Tag main, QualityReport report) {
        Tag section = main.add("section", "detail");
        section.say("h2", "", "Appendix: counts that nobody signs");
        section.say("p", "", "They show where the findings lie, what was found in the libraries, whether a unit or a document stands alone that should not,"
                + " and how much was looked at.");
        rules(section, report);
        libraries(section, report);
        counts(section, report, "Units", "Unit", "Times", line -> line.summary().units());
        counts(section, report, "Sources of limits and codes", "What document", "Times",
                line -> line.summary().sources());
        lookedAt(section, report);
    }

    /** How thorough the proofs were: what they went through. */
    private static void lookedAt(Tag section, QualityReport report) {
        List<Line> lines = report.lines().stream().filter(line -> line.summary().paths().isPresent()).toList();
        if (lines.isEmpty()) {
            return;
        }
        section.say("h3", "", "How much was looked at");
        section.say("p", "", "Every path was followed with every state of the set-up; where it says \u201Cmore than\u201D, the rest was not looked at, and a proof may be missing.");
        Tag rows = ReportTables.table(section, "counts", List.of("Procedure", "States of the set-up", "Sequences of results to a conclusion", "Bounds on repeats"));
        lines.forEach(line -> line.summary().paths().ifPresent(paths -> ReportTables.row(rows, line.publication().title(), (paths.complete() ? "" : "more than ") + paths.states(),
                paths.paths().map(count -> count.bitLength() > MOST_BITS ? "more than 10^12" : count.toString()).orElse("without end"),
                paths.exact() ? "counted" : "taken as open")));
    }

    private static void rules(Tag section, QualityReport report) {
        section.say("h3", "", "Findings by rule");
        Map<String, Map<String, Integer>> byRule = byName(report, line -> line.summary().byRule());
        if (byRule.isEmpty()) {
            section.say("p", "", "No rule has found anything in the procedures.");
            return;
        }
        Map<String, String> weights = RuleIndex.headers().stream().collect(Collectors.toMap(RuleHeader::id,
                header -> header.severity().name().toLowerCase(Locale.ROOT), (one, other) -> one));
        Tag rows = ReportTables.table(section, "byrule", List.of("Rule", "Severity", "Times", "What procedures"));
        List<String> order = List.of("error", "warning", "advice", "");
        byRule.entrySet().stream().sorted(Comparator.comparing(rule -> order.indexOf(weights.getOrDefault(rule.getKey(), ""))))
                .forEach(rule -> row(rows, rule.getKey(), weights.getOrDefault(rule.getKey(), ""), rule.getValue()));
    }

    private static void row(Tag rows, String rule, String weight, Map<String, Integer> procedures) {
        ReportTables.row(rows, rule, weight, String.valueOf(sum(procedures)), places(procedures));
    }

    private static void libraries(Tag section, QualityReport report) {
        Map<String, List<String>> users = new TreeMap<>();
        report.lines().forEach(line -> line.publication().procedure().libraries().forEach(library ->
                users.computeIfAbsent(library.name().text(), name -> new ArrayList<>()).add(line.publication().title())));
        Map<String, List<Finding>> found = report.libraries().stream().collect(Collectors.toMap(
                checked -> checked.library().name().text(), CheckedLibrary::findings, (one, other) -> one, TreeMap::new));
        found.keySet().forEach(name -> users.putIfAbsent(name, List.of()));
        if (users.isEmpty()) {
            return;
        }
        Map<String, String> titles = new TreeMap<>();
        Stream.concat(report.lines().stream().flatMap(line -> line.publication().procedure().libraries().stream()), report.libraries().stream().map(CheckedLibrary::library))
                .filter(library -> !library.title().isBlank()).forEach(library -> titles.put(library.name().text(), PlainText.line(library.title())));
        Map<String, String> digests = new TreeMap<>();
        Stream.concat(report.lines().stream().flatMap(line -> line.publication().procedure().libraries().stream()), report.libraries().stream().map(CheckedLibrary::library))
                .forEach(library -> digests.computeIfAbsent(library.name().text(), first -> ContentDigest.of(library)));
        section.say("h3", "", "Libraries");
        Tag rows = ReportTables.table(section, "libraries", List.of("Library", "Used by", "What was found in it, and its SHA-256"));
        users.forEach((name, procedures) -> ReportTables.row(rows, titles.getOrDefault(name, name),
                Phrases.counted(procedures.size(), "procedure", "procedures"), findings(found.get(name)) + ". SHA-256 " + digests.getOrDefault(name, "unknown")));
    }

    private static String findings(List<Finding> found) {
        if (found == null) {
            return "not looked at: it lies elsewhere";
        }
        return found.isEmpty() ? "nothing" : found.stream().map(finding -> "line " + finding.at().line() + ", "
                + finding.rule() + ": " + finding.message()).collect(Collectors.joining(" "));
    }

    private static void counts(Tag section, QualityReport report, String title, String what, String number,
            Function<Line, Map<String, Integer>> of) {
        Map<String, Map<String, Integer>> counted = byName(report, of);
        if (counted.isEmpty()) {
            return;
        }
        section.say("h3", "", title);
        Tag rows = ReportTables.table(section, "counts", List.of(what, number, "What procedures"));
        counted.forEach((name, procedures) -> ReportTables.row(rows, name, String.valueOf(sum(procedures)),
                procedures.size() == report.lines().size() && procedures.size() > 1 ? "all of them" : places(procedures)));
    }

    /** For each name how often it stands in each procedure, the most frequent first. */
    static Map<String, Map<String, Integer>> byName(QualityReport report, Function<Line, Map<String, Integer>> of) {
        Map<String, Map<String, Integer>> all = new TreeMap<>();
        report.lines().forEach(line -> of.apply(line).forEach((name, count) ->
                all.computeIfAbsent(name, key -> new LinkedHashMap<>()).merge(line.publication().title(), count, Integer::sum)));
        Map<String, Map<String, Integer>> sorted = new LinkedHashMap<>();
        all.entrySet().stream().sorted((one, other) -> sum(other.getValue()) - sum(one.getValue()))
                .forEach(entry -> sorted.put(entry.getKey(), entry.getValue()));
        return sorted;
    }

    static int sum(Map<String, Integer> counts) {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    private static String places(Map<String, Integer> procedures) {
        return ReportTables.listed(procedures.entrySet().stream()
                .map(entry -> entry.getKey() + (entry.getValue() == 1 ? "" : " " + entry.getValue() + "\u00D7")).toList());
    }
}

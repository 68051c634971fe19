/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.faults.Ambiguity;
import org.faultwright.analysis.faults.Figures;
import org.faultwright.analysis.faults.QaSummary;
import org.faultwright.analysis.faults.Testability;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.procedure.Name;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;

/** The details of one procedure. */
final class QualityDetail {
    private final Line line;
    private final QaSummary summary;

    QualityDetail(Line line) {
        this.line = line;
        this.summary = line.summary();
    }

    void add(Tag main) {
        Tag section = main.add("section", "detail");
        section.say("h2", "", line.publication().title());
        section.say("p", "small", line.publication().procedure().name().text() + ", " + line.publication().revision()
                + ", digest " + line.publication().shortDigest());
        findings(section);
        faults(section);
        paths(section);
        words(section);
    }

    private void findings(Tag section) {
        List<Finding> findings = line.publication().findings();
        section.say("h3", "", "Findings");
        if (findings.isEmpty()) {
            section.say("p", "", "None.");
            return;
        }
        Tag rows = table(section, "Line", "Weight", "Rule", "What is wrong, and what to do");
        for (Finding finding : findings) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(String.valueOf(finding.at().line()));
            row.say("td", "", finding.severity().name().toLowerCase(Locale.ROOT));
            row.say("td", "", finding.rule());
            Tag words = row.add("td").text(finding.message()).space().text(finding.advice());
            if (!finding.path().isEmpty()) {
                words.say("p", "small", "Path: " + path(finding.path()));
            }
        }
    }

    private static Tag table(Tag section, String... columns) {
        Tag table = section.add("table", "list");
        Tag head = table.add("thead").add("tr");
        for (String column : columns) {
            boolean wide = column.equals("Fault") || column.startsWith("What");
            head.add("th", wide ? "wide" : "").set("scope", "col").text(column);
        }
        return table.add("tbody");
    }

    private void faults(Tag section) {
        if (summary.faults().isEmpty()) {
            return;
        }
        section.say("h3", "", "Faults");
        Tag rows = table(section, "Fault", "How often", "Found", "Told apart", "Example", "Expected", "Worst");
        for (QaSummary.FaultLine fault : summary.faults()) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(Attention.title(fault.fault()));
            row.say("td", "", Figures.percent(fault.weight()));
            row.say("td", fault.isFound() ? "" : "open", fault.isFound() ? "yes" : "no");
            row.say("td", "", fault.groupSize() == 1 ? "yes" : "one of " + fault.groupSize());
            row.say("td", "", fault.hasExample() ? "yes" : "no");
            row.say("td", "", QualityPage.expected(fault.times()));
            row.say("td", "", QualityPage.worst(fault.times()));
        }
        for (Ambiguity.Group group : summary.groups()) {
            section.say("p", "", "Nothing tells apart" + (group.acknowledged() ? ", as the author says: " : ": ")
                    + Attention.names(group) + ".");
        }
        summary.testability().ifPresent(found -> section.say("p", "", testability(found)));
    }

    private static String testability(Testability found) {
        return "Weighted by how often each fault is met, " + Figures.percent(found.detected())
                + " of them are noticed, and of those " + Figures.percent(found.isolated(1)) + " are narrowed to one fault, "
                + Figures.percent(found.isolated(2)) + " to two or fewer (fractions of fault detection and isolation,"
                + " MIL-HDBK-2165 and IEEE 1522).";
    }

    private void paths(Tag section) {
        summary.paths().ifPresent(paths -> {
            section.say("h3", "", "Paths");
            section.say("p", "", reach(paths));
            paths.shortest().ifPresent(path -> section.say("p", "", "The shortest comes to a conclusion in "
                    + path.size() + " steps: " + path(path) + "."));
            paths.worstSeconds().ifPresent(seconds -> section.say("p", "", "The slowest takes "
                    + Figures.minutes(seconds) + "."));
            if (!paths.always().isEmpty()) {
                section.say("p", "", "On every path: " + paths.always().stream().map(Name::text)
                        .collect(Collectors.joining(", ")) + ".");
            }
        });
    }

    private static String reach(PathReport paths) {
        return "Some path comes to " + paths.stepsReached() + " of " + paths.steps() + " steps and takes "
                + paths.outcomesTaken() + " of " + paths.outcomes() + " results. "
                + paths.paths().map(count -> (count.bitLength() > 40 ? "More than 10^12" : count.toString())
                        + " sequences of results end at a conclusion. ").orElse("")
                + (paths.complete() ? "All " : "More than ") + paths.states() + " states of the set-up were looked at"
                + (paths.exact() ? ", bounds on repeats counted." : ", bounds on repeats taken as open.");
    }

    private static String path(List<PathStep> path) {
        return path.stream().map(PathStep::toString).collect(Collectors.joining(", "));
    }

    private void words(Tag section) {
        section.say("h3", "", "Units, codes and notes");
        if (!summary.units().isEmpty()) {
            section.say("p", "", "Units written: " + counted(summary.units()) + ".");
        }
        if (summary.codes().all() > 0) {
            section.say("p", "", summary.codes() + " codes of the indicators read have a result of their own.");
        }
        section.say("p", "", summary.notes().isEmpty() ? "No safety note is read."
                : "Notes read: " + summary.notes().stream().map(use -> use.note().word().name() + " " + use.note().name()
                        + " at " + (use.steps() == 1 ? "1 step" : use.steps() + " steps"))
                        .collect(Collectors.joining("; ")) + ".");
    }

    private static String counted(Map<String, Integer> counts) {
        return counts.entrySet().stream().map(entry -> entry.getKey() + " " + entry.getValue() + "\u00D7")
                .collect(Collectors.joining(", "));
    }
}

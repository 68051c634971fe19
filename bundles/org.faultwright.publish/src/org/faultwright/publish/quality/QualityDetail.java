/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.trace.Testability;
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

    void add(Tag main, String place) {
        Tag section = main.add("section", "detail").id(place);
        section.say("h2", "", line.publication().title());
        section.say("p", "small", line.publication().procedure().name().text() + ", " + line.publication().revision()
                + ", digest " + line.publication().shortDigest());
        List<String> attention = Attention.to(line);
        section.say("p", "", attention.isEmpty() ? "Nothing stands out." : String.join(" ", attention));
        ChangesPart.detail(section, line);
        findings(section);
        faults(section);
        tried(section);
        summary.paths().ifPresent(paths -> QualityPaths.add(section, paths, line.publication().procedure()));
        words(section);
        SignOff.one(section, line.publication().shortDigest());
    }

    private void findings(Tag section) {
        List<Finding> findings = line.publication().findings();
        section.say("h3", "", "Findings");
        if (findings.isEmpty()) {
            section.say("p", "", "None.");
            return;
        }
        section.say("p", "", "By rule: " + Rows.counted(summary.byRule()) + ".");
        Tag rows = Rows.table(section, "findings", List.of("Line", "Severity", "Rule", "What is wrong, and what to do"));
        for (Finding finding : findings) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(line.publication().place(finding).substring("line ".length()));
            row.say("td", "", finding.severity().name().toLowerCase(Locale.ROOT));
            row.say("td", "", finding.rule());
            Tag words = row.add("td").text(finding.message()).space().text(finding.advice());
            if (!finding.path().isEmpty()) {
                words.say("p", "small", "Path: " + QualityPaths.path(finding.path(), line.publication().procedure()));
            }
        }
    }

    private void faults(Tag section) {
        if (summary.faults().isEmpty()) {
            return;
        }
        section.say("h3", "", "Faults");
        Tag rows = Rows.table(section, "", List.of("Fault", "How often", "Found", "Told apart", "Example", "Expected", "Worst"));
        for (QaSummary.FaultLine fault : summary.faults()) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(Attention.title(fault.fault()));
            row.say("td", "", PrintedNumbers.percent(fault.weight()));
            row.say("td", fault.isFound() ? "" : "open", fault.isFound() ? "yes" : "no");
            row.say("td", "", fault.groupSize() == 1 ? "yes" : "one of " + fault.groupSize());
            row.say("td", "", fault.hasExample() ? "yes" : "no");
            row.say("td", "", QualityPage.expected(fault.times()));
            row.say("td", "", QualityPage.worst(fault.times()));
        }
        summary.groups().forEach(group -> section.say("p", "", Attention.apart(group)));
        summary.testability().ifPresent(found -> section.say("p", "", testability(found)));
    }

    private static String testability(Testability found) {
        return "Weighted by how often each fault is met, " + PrintedNumbers.percent(found.detected())
                + " of them are noticed, and of those " + PrintedNumbers.percent(found.isolated(1)) + " are narrowed to one fault, "
                + PrintedNumbers.percent(found.isolated(2)) + " to two or fewer (fractions of fault detection and isolation,"
                + " MIL-HDBK-2165 and IEEE 1522).";
    }

    private void tried(Tag section) {
        section.say("h3", "", "Tried on paper by examples");
        section.say("p", "", summary.examples() + " examples go as they say; they take " + summary.outcomes()
                + " results of steps with a choice, and reach " + summary.conclusions() + " conclusions.");
        QaSummary.Open open = summary.open();
        open(section, "Results that no example takes", Told.ways(open.outcomes()));
        open(section, "Conclusions that no example reaches", Told.steps(open.conclusions()));
        open(section, "Examples that end otherwise than they say", Told.examples(open.examples()));
    }

    private static void open(Tag section, String what, List<String> names) {
        if (!names.isEmpty()) {
            section.say("p", "", what + ": " + Rows.listed(names) + ".");
        }
    }

    private void words(Tag section) {
        section.say("h3", "", "Units, sources, codes and notes");
        if (!summary.units().isEmpty()) {
            section.say("p", "", "Units written: " + Rows.counted(summary.units()) + ".");
        }
        section.say("p", "", summary.limits().all() == 0 ? "No limit is stated." : "A source is named for " + summary.limits()
                + " limits and bands.");
        open(section, "Without a source", Told.steps(summary.unsourced()));
        if (!summary.sources().isEmpty()) {
            section.say("p", "", "Limits and code tables rest on: " + Rows.counted(summary.sources()) + ".");
        }
        if (summary.codes().all() > 0) {
            section.say("p", "", summary.codes() + " codes of the indicators read have a result of their own.");
            open(section, "Without one", Told.codes(summary.open().codes()));
        }
        section.say("p", "", summary.notes().isEmpty() ? "No safety note is read."
                : "Notes read: " + summary.notes().stream().map(use -> Told.note(use.note()) + " at " + Rows.count(use.steps(), "step", "steps")).collect(Collectors.joining("; ")) + ".");
    }
}

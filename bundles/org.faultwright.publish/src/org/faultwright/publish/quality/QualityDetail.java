/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.quality.UnnamedCode;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.trace.Testability;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Step;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.UsedDeclarations;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.quantity.Exact;

/** The details of one procedure. Its steps are called as on its card. */
final class QualityDetail {
    private final QualityReport report;
    private final Line line;
    private final QaSummary summary;
    private final CardSteps steps;

    QualityDetail(QualityReport report, Line line) {
        this.report = report;
        this.line = line;
        this.summary = line.summary();
        this.steps = line.steps();
    }

    /** @param first whether it follows the list of all of them, on the same page */
    void add(Tag main, String place, boolean first) {
        Tag section = main.add("section", first ? "detail first" : "detail").id(place);
        section.say("h2", "", line.publication().title());
        section.say("p", "small", line.publication().revision() + RecordPart.byAndDated(line.publication()) + ". Numbers of steps are those of the bench card. SHA-256 "
                + line.publication().digest() + " over the text and its libraries.");
        List<String> attention = Attention.to(line);
        section.say("p", "", attention.isEmpty() ? "Nothing stands out." : String.join(" ", attention));
        ChangesPart.detail(section, line);
        if (report.since().isEmpty()) {
            section.say("p", "", MissingInputs.SINCE);
        }
        findings(section);
        dangers(section);
        faults(section);
        tried(section);
        summary.paths().ifPresent(paths -> QualityPaths.add(section, paths, summary.times(), steps));
        units(section);
        sources(section);
        SignOff.one(section, line.publication());
    }

    private void findings(Tag section) {
        List<Finding> findings = line.publication().findings();
        section.say("h3", "", "Findings");
        if (findings.isEmpty()) {
            section.say("p", "", "None.");
            return;
        }
        section.say("p", "", "By rule: " + ReportTables.counted(summary.byRule()) + ".");
        Tag rows = ReportTables.table(section, "findings", List.of("Line", "Severity", "Rule", "What is wrong, and what to do"));
        for (Finding finding : findings) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(line.publication().place(finding).substring("line ".length()));
            row.say("td", "", finding.severity().name().toLowerCase(Locale.ROOT));
            row.say("td", "", finding.rule());
            Tag words = row.add("td").text(steps.inSentence(finding.message())).space().text(steps.inSentence(finding.advice()));
            if (!finding.path().isEmpty()) {
                words.say("p", "small", "Path, by the steps of the card: " + QualityPaths.path(finding.path(), steps));
            }
        }
    }

    /** What is made live while it is open, notes with their steps, protective tests, codes. */
    private void dangers(Tag section) {
        section.say("h3", "", "Dangers, notes and codes");
        List<Attention.Live> live = Attention.live(line);
        if (live.isEmpty()) {
            section.say("p", "", "No step makes the unit live while it is open.");
        } else {
            section.say("p", "", "The unit is made live while it is open at:");
            Tag list = section.add("ul", "told");
            live.forEach(one -> list.say("li", one.dangerous() && !one.told() ? "open" : "", "step " + one.words() + " (" + one.open() + "): "
                    + (one.told() ? "a note about it is read there." : "no note about shock is read there."
                            + (one.dangerous() ? "" : " No point of the unit is said to carry a voltage that hurts."))));
        }
        new UsedDeclarations(steps.plan()).notes().forEach((note, at) -> section.say("p", "", note.word().name() + " \u201C" + PlainText.line(note.hazard()) + "\u201D is read at step "
                + steps.numbers(at) + "."));
        if (summary.notes().isEmpty()) {
            section.say("p", "", "No safety note is read.");
        }
        open(section, "Protective tests stand at step", steps.plan().steps().filter(step -> !step.frame().precautions().tests().isEmpty()).map(steps::named).toList());
        open(section, "Something is repaired and no part is named at step", steps.plan().steps().filter(step -> step instanceof Step.Do task
                && (task.repairs().isPresent() || isRemedy(task)) && step.frame().handles().isEmpty()).map(steps::named).toList());
        if (summary.codes().all() > 0) {
            section.say("p", "", "Of the codes of lamps and read-outs, where a step looks at them, " + ReportTables.share(summary.codes()) + " have a result of their own.");
            summary.open().codes().forEach(code -> section.say("p", code.isGrave() ? "open" : "", Phrases.capital(Attention.code(line, code)) + later(code)));
        }
    }

    private boolean isRemedy(Step.Do task) {
        return steps.plan().procedure().faults().stream().flatMap(fault -> fault.remedies().stream()).anyMatch(name -> name.text().equals(task.name().text()));
    }

    private static String later(UnnamedCode code) {
        return code.later() ? " A step behind it asks for the code." : "";
    }

    private void faults(Tag section) {
        if (summary.faults().isEmpty()) {
            return;
        }
        section.say("h3", "", "Faults");
        Optional<Exact> all = summary.faults().stream().map(fault -> fault.fault().cases().map(cases -> cases.value()))
                .reduce(Optional.of(Exact.ZERO), (sum, cases) -> sum.flatMap(known -> cases.map(known::plus)));
        List<String> columns = List.of("Fault", all.map(sum -> "Cases, of " + sum).orElse("Share of cases"), "Found", "Told apart", "In the record", "Example", "Expected, min", "Worst, min");
        Tag rows = ReportTables.table(section, "times", columns);
        for (QaSummary.FaultLine fault : summary.faults()) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(Attention.title(fault.fault()));
            row.say("td", "", cases(fault.fault()) + PrintedNumbers.percent(fault.weight()));
            row.say("td", fault.isFound() ? "" : "open", fault.isFound() ? "yes" : "no");
            row.say("td", "", fault.groupSize() == 1 ? "yes" : "one of " + fault.groupSize());
            row.say("td", "", fault.reportedWithOthers().map(end -> "one of " + end.finds().size()).orElse(fault.isFound() ? "alone" : "not"));
            row.say("td", "", fault.hasExample() ? "yes" : "no");
            row.say("td", "number", QualityPage.expected(fault.times()));
            row.say("td", "number", QualityPage.worst(fault.times()));
        }
        summary.groups().forEach(group -> section.say("p", "", Attention.apart(group, steps)));
        Attention.reportedTogether(line, true).forEach(point -> section.say("p", "open", Phrases.capital(point)));
        if (summary.faults().stream().anyMatch(fault -> fault.times().assumed())) {
            section.say("p", "small", QualityPage.ASSUMED);
        }
        summary.testability().ifPresent(found -> section.say("p", "", testability(found)));
    }

    private static String cases(Fault fault) {
        return fault.cases().map(cases -> cases.value() + ", ").orElse("");
    }

    private static String testability(Testability found) {
        return "Weighted by their cases, the steps notice " + PrintedNumbers.percent(found.detected())
                + " of the faults, and narrow " + PrintedNumbers.percent(found.isolated(1)) + " of those down to one, "
                + PrintedNumbers.percent(found.isolated(2)) + " to two or fewer; the more the better (fractions of fault detection and isolation,"
                + " MIL-HDBK-2165 and IEEE 1522).";
    }

    private void tried(Tag section) {
        section.say("h3", "", "Tried on paper by examples");
        section.say("p", "", "Of the examples " + ReportTables.share(summary.examples()) + " go as they say. Of the results at steps with a choice, those inside routines left out, they take "
                + ReportTables.share(summary.outcomes()) + ", and of the conclusions " + ReportTables.share(summary.conclusions()) + "."
                + " This is paper: who tried it at the bench, and on which unit, stands below with a signature.");
        QaSummary.Open open = summary.open();
        open(section, "Results that no example takes", steps.results(open.outcomes()));
        open(section, "Conclusions that no example reaches", steps.named(open.conclusions()));
        open(section, "Examples that end otherwise than they say", CardSteps.examples(open.examples()));
    }

    private static void open(Tag section, String what, List<String> names) {
        if (!names.isEmpty()) {
            section.say("p", "", what + ": " + String.join("; ", names) + ".");
        }
    }

    /** Yes or no, and by what it is known. */
    private void units(Tag section) {
        section.say("h3", "", "Units and limits");
        Set<String> rules = RuleIndex.headers().stream().filter(header -> header.group() == RuleHeader.Group.QUANTITIES).map(RuleHeader::id).collect(Collectors.toSet());
        List<Finding> found = line.publication().findings().stream().filter(finding -> rules.contains(finding.rule())).toList();
        section.say("p", found.isEmpty() ? "" : "open", found.isEmpty() ? "Units consistent: yes. Every unit is known and is one of what is measured there, no number stands without one,"
                + " limits and bands meet without a hole or an overlap, and every formula comes out in the unit of its limit: none of the " + rules.size()
                + " rules about quantities and limits has found anything."
                : "Units consistent: no, or not proved. " + Phrases.counted(found.size(), "finding", "findings") + " above, at " + found.stream().map(line.publication()::place).distinct()
                        .collect(Collectors.joining(", ")) + ".");
    }

    private void sources(Tag section) {
        section.say("h3", "", "Sources and instruments");
        section.say("p", "", summary.limits().all() == 0 ? "No limit is stated." : "Of the limits and bands, those of routines and libraries too, "
                + ReportTables.share(summary.limits()) + " name a source.");
        open(section, "Without a source", steps.named(summary.unsourced()));
        if (!summary.sources().isEmpty()) {
            section.say("p", "", "Limits and code tables rest on: " + ReportTables.counted(summary.sources()) + ".");
        }
        open(section, "Without a year or an edition", UndatedSources.of(line));
        List<String> days = new ArrayList<>();
        new UsedDeclarations(steps.plan()).instruments().keySet().stream().filter(one -> one.calibrationDue().isPresent())
                .min(Comparator.comparing((Instrument one) -> one.calibrationDue().get().value())).ifPresent(one -> days.add("The first calibration to run out is that of \u201C"
                        + PlainText.line(one.title().isBlank() ? one.name().text() : one.title()) + "\u201D, on " + one.calibrationDue().get().value() + "."));
        UndatedSources.oldest(line).ifPresent(day -> days.add("The oldest dated source is of " + day + "."));
        if (!days.isEmpty()) {
            section.say("p", "", String.join(" ", days));
        }
        section.say("p", "", report.asOf().map(day -> "Both were held against " + day + ".").orElse(MissingInputs.AS_OF));
    }
}

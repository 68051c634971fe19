/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.quality.MadeLive;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.quality.UnnamedCode;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.StepRun;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;

/** What a reader with two minutes should look at, one sentence each, the gravest first. */
final class Attention {
    private Attention() {
    }

    static List<String> to(Line line) {
        List<String> points = new ArrayList<>();
        QaSummary summary = line.summary();
        errors(line, points);
        line.since().filter(SinceRelease::hidesAChange)
                .filter(since -> line.publication().status() == Revision.Status.RELEASED).ifPresent(since -> points.add(
                        "It says released, has changed since the last release, and has the same revision number."));
        List<String> untold = untold(line);
        if (!untold.isEmpty()) {
            points.add("An open unit is made live, and no note about shock is read there: " + String.join(" ", untold));
        }
        codes(line).forEach(point -> points.add(sentence(point)));
        List<String> missed = summary.faults().stream().filter(fault -> !fault.isFound())
                .map(fault -> title(fault.fault())).toList();
        if (!missed.isEmpty()) {
            points.add("Its steps do not lead to " + String.join(", ", missed) + ".");
        }
        if (summary.examples().some() < summary.examples().all()) {
            points.add("Of its examples only " + summary.examples() + " go as they say.");
        }
        untried(summary, points);
        summary.groups().stream().filter(group -> !group.acknowledged())
                .forEach(group -> points.add("Nothing tells apart: " + names(group) + "."));
        reportedTogether(line, true).forEach(point -> points.add(sentence(point)));
        if (summary.limits().some() < summary.limits().all()) {
            points.add("A source is named for " + summary.limits() + " limits.");
        }
        List<String> undated = UndatedSources.of(line);
        if (!undated.isEmpty()) {
            points.add("No year or edition is said of " + ReportTables.listed(undated) + ".");
        }
        if (summary.paths().isPresent() && summary.times().worst().isEmpty()) {
            points.add("Nothing bounds the time that it can take.");
        }
        if (summary.untimed() > 0) {
            points.add(summary.untimed() == 1 ? "1 step states no time." : summary.untimed() + " steps state no time.");
        }
        return List.copyOf(points);
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static void errors(Line line, List<String> points) {
        List<Finding> errors = line.publication().errors();
        if (!errors.isEmpty()) {
            points.add((errors.size() == 1 ? "1 error" : errors.size() + " errors") + ", the first at "
                    + line.publication().place(errors.get(0)) + ": " + line.steps().inSentence(errors.get(0).message()));
        }
    }

    private static void untried(QaSummary summary, List<String> points) {
        QaSummary.Share outcomes = summary.outcomes();
        if (outcomes.some() < outcomes.all()) {
            points.add("No example takes " + (outcomes.all() - outcomes.some()) + " of its " + outcomes.all()
                    + " results.");
        }
        List<String> never = summary.faults().stream().filter(fault -> !fault.hasExample())
                .map(fault -> title(fault.fault())).toList();
        if (!never.isEmpty()) {
            points.add("No example is a case of " + String.join(", ", never) + ".");
        }
    }

    /** Codes of a lamp or read-out that may tell of a danger and that no result names, each with its meaning and where it leads. */
    static List<String> codes(Line line) {
        return line.summary().open().codes().stream().filter(UnnamedCode::isGrave).map(code -> code(line, code)).distinct().toList();
    }

    static String code(Line line, UnnamedCode code) {
        String meaning = PlainText.line(code.code().meaning());
        return "at step " + line.steps().named(code.step()) + " no result is \u201C" + code.code().pattern().text() + "\u201D, which means \u201C"
                + (meaning.isEmpty() ? "nothing that the text says" : meaning) + "\u201D; it goes " + goes(line, code) + ".";
    }

    private static String goes(Line line, UnnamedCode code) {
        return code.goes().map(target -> line.steps().plan().placed().filter(placed -> placed.step() == code.step()).findFirst()
                .map(placed -> placed.run().target(target)).map(to -> to instanceof StepRun.To step ? "with \u201Canything else\u201D to step "
                        + step.step().label() : "with \u201Canything else\u201D out of the routine").orElse("with \u201Canything else\u201D")).orElse("nowhere");
    }

    /** Steps that make an open unit live, may hurt, and read no note about shock. */
    static List<String> untold(Line line) {
        return live(line).stream().filter(one -> one.dangerous() && !one.told()).map(one -> "step " + one.words() + " (" + one.open() + ").").toList();
    }

    /** @param words number and title @param open what is open, in words */
    record Live(String words, String open, boolean told, boolean dangerous) {
    }

    /** One for each place on the card; a note must be read on every path to it. */
    static List<Live> live(Line line) {
        Map<String, List<MadeLive>> byPlace = new LinkedHashMap<>();
        line.summary().madeLive().forEach(one -> byPlace.computeIfAbsent(line.steps().number(one.place()), first -> new ArrayList<>()).add(one));
        return byPlace.entrySet().stream().map(entry -> live(line, entry.getKey(), entry.getValue())).toList();
    }

    private static Live live(Line line, String number, List<MadeLive> all) {
        Set<String> open = new LinkedHashSet<>();
        all.forEach(one -> one.open().forEach((Setting setting) -> open.add(Wording.setting(setting, line.steps().plan().scope()))));
        MadeLive first = all.stream().filter(one -> !one.told()).findFirst().orElse(all.get(0));
        Step step = first.place().step();
        Step outer = first.place().outermost().step();
        String within = outer == step || number.startsWith(line.steps().number(outer)) ? "" : ", from step " + line.steps().numbers(all.stream()
                .filter(one -> one.told() == first.told()).map(one -> one.place().outermost().step()).toList());
        return new Live(number + " \u201C" + PlainText.line(Wording.title(step)) + "\u201D" + within, String.join(", ", open), first.told(), first.dangerous());
    }

    /** Faults that the steps tell apart and whose conclusion names others too: the record then says less than is known. @param inWhole with their names */
    static List<String> reportedTogether(Line line, boolean inWhole) {
        Map<Step.Conclude, List<String>> together = new LinkedHashMap<>();
        line.summary().faults().stream().filter(fault -> fault.groupSize() == 1).forEach(fault -> fault.reportedWithOthers().ifPresent(end ->
                together.computeIfAbsent(end, first -> new ArrayList<>()).add(title(fault.fault()))));
        return together.entrySet().stream().map(entry -> "step " + line.steps().named(entry.getKey()) + " records one of " + entry.getKey().finds().size()
                + (inWhole ? ", though the steps tell them apart: " + String.join("; ", entry.getValue()) : "") + ".").toList();
    }

    private static String names(QaSummary.GroupLine group) {
        return group.faults().stream().map(Attention::title).collect(Collectors.joining(", "));
    }

    /** Faults that nothing tells apart, and what would separate them. */
    static String apart(QaSummary.GroupLine group, CardSteps steps) {
        String found = "Nothing tells apart" + (group.acknowledged() ? ", as the author says: " : ": ") + names(group) + ". ";
        if (!group.unused().isEmpty()) {
            return found + ReportTables.listed(steps.named(group.unused())) + " would, but nothing leads there.";
        }
        return found + (group.silent().isEmpty() ? "No step of the text would; it takes another one."
                : "What all of them show at " + ReportTables.listed(steps.named(group.silent())) + " is not stated; it may separate them.");
    }

    static String title(Fault fault) {
        return fault.title().isBlank() ? fault.name().text() : fault.title();
    }
}

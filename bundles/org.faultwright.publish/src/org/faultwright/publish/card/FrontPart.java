/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.LikelyFaults;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;

/** What it can be, how long it takes, and all steps with where they lead. */
final class FrontPart {
    private static final String END = "\u25A0";

    private FrontPart() {
    }

    static void add(Tag into, CardPlan plan) {
        faults(into, plan);
        if (!plan.sections().get(0).steps().isEmpty()) {
            into.say("h2", "", "All steps (" + END + " ends the job)");
            plan.sections().forEach(section -> steps(into, plan, section));
        }
    }

    private static void faults(Tag into, CardPlan plan) {
        List<LikelyFaults.Case> cases = plan.likely().cases();
        if (cases.isEmpty()) {
            return;
        }
        into.say("h2", "", "What it can be");
        Tag table = into.add("table", "faults");
        Tag head = table.add("thead").add("tr");
        List.of("Fault", "Cases", "Time", "Ends at").forEach(word -> head.add("th").set("scope", "col").text(word));
        Tag rows = table.add("tbody");
        for (LikelyFaults.Case one : cases) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(PaperFront.title(one.fault()));
            row.add("td").text(one.fault().cases().map(count -> count.value().toString()).orElse(PrintedNumbers.percent(one.weight())));
            row.add("td").text(one.seconds().map(TimeText::upToMinutes).orElse("open"));
            Tag end = row.add("td");
            List<PathStep> path = one.path();
            plan.sections().get(0).steps().stream().filter(step -> !path.isEmpty() && step.step().name().text().equals(path.get(path.size() - 1).step())).findFirst()
                    .ifPresentOrElse(step -> arrow(end, step), () -> end.text("no step finds it"));
        }
        plan.likely().inAll().ifPresent(all -> all.expected().ifPresent(time -> into.add("p").say("span", "key", "Time to expect").space().text(
                TimeText.upToMinutes(time) + all.worst().map(worst -> ", at worst " + TimeText.upToMinutes(worst)).orElse(""))));
    }

    /** An arrow with the number of the step, which stay together. */
    static Tag arrow(Tag into, PlacedStep step) {
        return into.link(step.anchor(), "way", "Go to step " + step.label()).text(Wording.ARROW + " " + step.label());
    }

    private static void steps(Tag into, CardPlan plan, CardSection section) {
        if (section.isRoutine()) {
            Tag line = into.add("p", "branch");
            line.link(CardPlan.anchor(section), "way", "To routine " + section.letter()).text(section.letter());
            line.space().text("Routine: " + PaperCard.title(section.graph()));
        }
        Tag list = into.add("ul", "tree");
        section.steps().forEach(step -> {
            Tag line = list.add("li");
            line.link(step.anchor(), "way", "To step " + step.label()).text((step.step() instanceof Step.Conclude ? END : "") + step.label());
            line.space().text(PlainText.line(Wording.title(step.step()))).space();
            leads(line, ways(plan, step));
        });
    }

    /** Where a step leads, with the results that lead there; of a routine in its box, where that is left to. */
    private static Map<PlacedStep, List<String>> ways(CardPlan plan, PlacedStep step) {
        Map<PlacedStep, List<String>> ways = new LinkedHashMap<>();
        List<PlacedStep> leaving = plan.inside(step).isEmpty() ? List.of(step) : plan.inside(step);
        for (PlacedStep from : leaving) {
            for (Outcome outcome : from.step().outcomes()) {
                outcome.target().map(from.run()::target).ifPresent(target -> way(plan, ways, step, outcome, target));
                outcome.repeat().map(repeat -> from.run().target(repeat.otherwise())).ifPresent(target -> way(plan, ways, step, outcome, target));
            }
        }
        return ways;
    }

    private static void way(CardPlan plan, Map<PlacedStep, List<String>> ways, PlacedStep step, Outcome outcome, StepRun.Target target) {
        if (target instanceof StepRun.To to && !plan.inside(step).contains(to.step())) {
            List<String> by = ways.computeIfAbsent(to.step(), first -> new ArrayList<>());
            String word = outcome.key().equals("then") || outcome.key().equals(Step.DONE) ? "" : PlainText.phrase(outcome.key());
            if (!by.contains(word)) {
                by.add(word);
            }
        }
    }

    private static void leads(Tag line, Map<PlacedStep, List<String>> ways) {
        String between = "";
        for (Map.Entry<PlacedStep, List<String>> way : ways.entrySet()) {
            String by = way.getValue().stream().filter(word -> !word.isEmpty()).collect(Collectors.joining(", "));
            line.text(between);
            line.space().text(by).space();
            arrow(line, way.getKey());
            between = ";";
        }
    }
}

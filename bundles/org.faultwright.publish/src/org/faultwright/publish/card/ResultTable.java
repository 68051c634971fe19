/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;

/** The results of a step, each with a box to tick and the step it leads to. */
final class ResultTable {
    /** Boxes to tally a bounded repeat in; a larger bound is counted on the job slip. */
    private static final int MOST_BOXES = 9;
    private static final String BACK = "\u21A9";

    private final CardPlan plan;
    private int visits = 1;

    ResultTable(CardPlan plan) {
        this.plan = plan;
    }

    /** @param times how many boxes each result has */
    void visited(int times) {
        this.visits = times;
    }

    void add(Tag box, PlacedStep placed) {
        Step step = placed.step();
        Tag table = box.add("table", "results");
        Optional<LimitZones> zones = LimitZones.of(plan.procedure(), step);
        Tag rows = table.add("tbody");
        for (Outcome outcome : step.outcomes()) {
            Tag row = rows.add("tr");
            squares(row.add("td", "tick"));
            result(row.add("th", "seen").set("scope", "row"), step, outcome, zones);
            way(row.add("td", "to"), placed, outcome);
        }
    }

    private void squares(Tag cell) {
        for (int visit = 0; visit < visits; visit++) {
            cell.add("span", "square");
        }
    }

    /** The way on from a step that asks nothing. */
    void only(Tag box, PlacedStep placed, Outcome outcome) {
        outcome.target().ifPresent(target -> {
            Tag line = box.add("p", "go");
            if (placed.step() instanceof Step.Measure) {
                line.text(CardResult.of(placed.step(), outcome, plan.scope(), Optional.empty()).word()).space();
            }
            target(line, placed, target);
        });
    }

    private void result(Tag cell, Step step, Outcome outcome, Optional<LimitZones> zones) {
        CardResult result = isTold(step, outcome) ? CardResult.brief(step, outcome, plan.scope(), zones) : CardResult.of(step, outcome, plan.scope(), zones);
        String detail = result.detail();
        cell.say("b", "", result.word());
        TimePattern.of(result.word()).ifPresent(signals -> cell.space().add("span", "pattern").set("aria-hidden", "true").text(signals));
        if (!detail.isEmpty()) {
            cell.text(": " + detail);
        }
        if (!outcome.proves().isEmpty()) {
            cell.space().text("(proves " + Wording.settings(outcome.proves(), plan.scope()) + ")");
        }
    }

    /** Where the ends of a limit are worked out above, in the unit of the boxes, the readings of each outcome are not said again in another. */
    private static boolean isTold(Step step, Outcome outcome) {
        return CardResult.expected(step).filter(Wording::hasEndsToWorkOut).isPresent() && !(outcome.head() instanceof Outcome.Band)
                && step.outcomes().stream().noneMatch(other -> other.key().equals(Step.DOUBTFUL));
    }

    private void way(Tag cell, PlacedStep placed, Outcome outcome) {
        Tag first = cell.add("p");
        outcome.target().ifPresentOrElse(target -> target(first, placed, target),
                () -> first.text(Wording.ARROW + " not stated"));
        outcome.repeat().ifPresent(repeat -> tally(cell, placed, repeat));
    }

    private void tally(Tag cell, PlacedStep placed, Outcome.Repeat repeat) {
        Tag tally = cell.add("p", "tally");
        int boxes = Math.min(repeat.atMost(), MOST_BOXES);
        for (int visit = 0; visit < visits; visit++) {
            tally.say("span", "box", Wording.BOX.repeat(Math.max(0, boxes))).space();
        }
        tally
                .text(Wording.atMost(repeat) + ", then");
        tally.space();
        target(tally, placed, repeat.otherwise());
    }

    private void target(Tag into, PlacedStep placed, Name name) {
        StepRun.Target target = placed.run().target(name);
        if (target instanceof StepRun.To to) {
            FrontPart.arrow(into, to.step());
            to.left().forEach(left -> left.by().repeat().ifPresent(repeat -> tally(into, left.step(), repeat)));
        } else if (target instanceof StepRun.Back back) {
            into.say("b", "", BACK + " back with: " + PlainText.phrase(back.exit()));
            callers(into, placed);
            back.left().forEach(left -> left.by().repeat().ifPresent(repeat -> tally(into, left.step(), repeat)));
        } else {
            into.text(Wording.ARROW + " " + name.text() + " (not found)");
        }
    }

    /** Every step that the reader may have come from, to go back by. */
    private void callers(Tag into, PlacedStep placed) {
        PlacedStep outer = placed;
        while (outer.run().caller().isPresent()) {
            outer = outer.run().caller().get();
        }
        PlacedStep last = outer;
        plan.sections().stream().filter(section -> section.graph() == last.run().graph()).filter(CardSection::isRoutine).findFirst().ifPresent(section -> {
            into.space().text("to").space();
            NotesPart.links(into, plan.callers(section));
        });
    }
}

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
import org.faultwright.publish.plan.Placed;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Run;

/** The results of a step, each with a box to tick and the step it leads to. */
final class ResultTable {
    /** Boxes to tally a bounded repeat in; a larger bound is counted on the job slip. */
    private static final int MOST_BOXES = 9;

    private final Plan plan;

    ResultTable(Plan plan) {
        this.plan = plan;
    }

    void add(Tag box, Placed placed) {
        Step step = placed.step();
        Tag table = box.add("table", "results");
        Optional<LimitZones> zones = LimitZones.of(plan.procedure(), step);
        Tag rows = table.add("tbody");
        for (Outcome outcome : step.outcomes()) {
            Tag row = rows.add("tr");
            row.add("td", "tick").add("span", "square");
            result(row.add("th", "seen").set("scope", "row"), step, outcome, zones);
            way(row.add("td", "to"), placed, outcome);
        }
    }

    private void result(Tag cell, Step step, Outcome outcome, Optional<LimitZones> zones) {
        Result result = Result.of(step, outcome, plan.scope(), zones);
        cell.say("b", "", result.word());
        if (!result.detail().isEmpty()) {
            cell.text(": " + result.detail());
        }
        if (!outcome.proves().isEmpty()) {
            cell.say("p", "proves", "This proves: " + Wording.settings(outcome.proves(), plan.scope()));
        }
    }

    private void way(Tag cell, Placed placed, Outcome outcome) {
        Tag first = cell.add("p");
        outcome.target().ifPresentOrElse(target -> target(first, placed, target),
                () -> first.text(Wording.ARROW + " not stated"));
        outcome.repeat().ifPresent(repeat -> tally(cell, placed, repeat));
    }

    private void tally(Tag cell, Placed placed, Outcome.Repeat repeat) {
        Tag tally = cell.add("p", "tally");
        int boxes = Math.min(repeat.atMost(), MOST_BOXES);
        tally.say("span", "box", Wording.BOX.repeat(Math.max(0, boxes))).space()
                .text(Wording.atMost(repeat) + ", then");
        tally.space();
        target(tally, placed, repeat.otherwise());
    }

    private void target(Tag into, Placed placed, Name name) {
        Run.Target target = placed.run().target(name);
        if (target instanceof Run.To to) {
            String label = to.step().label();
            into.link(to.step().anchor(), "way", "Go to step " + label).say("b", "", Wording.ARROW + " " + label);
            into.space().say("span", "name", Wording.title(to.step().step()));
            to.left().forEach(left -> left.by().repeat().ifPresent(repeat -> tally(into, left.step(), repeat)));
        } else if (target instanceof Run.Back back) {
            into.say("b", "", "back").space().text("with: " + PlainText.phrase(back.exit()));
            back.left().forEach(left -> left.by().repeat().ifPresent(repeat -> tally(into, left.step(), repeat)));
        } else {
            into.text(Wording.ARROW + " " + name.text() + " (not found)");
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;

/** The results of a step, each with a box to tick and the step it leads to. */
final class ResultTable {
    /** Boxes to tally a bounded repeat in; a larger bound is counted on the job slip. */
    private static final int MOST_BOXES = 9;

    private final Plan plan;
    private final Section section;

    ResultTable(Plan plan, Section section) {
        this.plan = plan;
        this.section = section;
    }

    void add(Tag box, Step step) {
        Tag table = box.add("table", "results");
        Optional<LimitZones> zones = LimitZones.of(plan.procedure(), step);
        Tag rows = table.add("tbody");
        for (Outcome outcome : step.outcomes()) {
            Tag row = rows.add("tr");
            row.add("td", "tick").add("span", "square");
            result(row.add("th", "seen").set("scope", "row"), step, outcome, zones);
            way(row.add("td", "to"), outcome);
        }
    }

    private void result(Tag cell, Step step, Outcome outcome, Optional<LimitZones> zones) {
        Result result = Result.of(step, outcome, plan.scope(), zones);
        cell.say("b", "", result.word());
        if (!result.detail().isEmpty()) {
            cell.text(": " + result.detail());
        }
        if (!outcome.proves().isEmpty()) {
            cell.say("p", "proves", "This proves: " + Words.settings(outcome.proves(), plan.scope()));
        }
    }

    private void way(Tag cell, Outcome outcome) {
        Tag first = cell.add("p");
        outcome.target().ifPresentOrElse(target -> target(first, target),
                () -> first.text(Words.ARROW + " not stated"));
        outcome.repeat().ifPresent(repeat -> {
            Tag tally = cell.add("p", "tally");
            int boxes = Math.min(repeat.atMost(), MOST_BOXES);
            tally.say("span", "box", Words.BOX.repeat(Math.max(0, boxes))).space()
                    .text("at most " + repeat.atMost() + (repeat.atMost() == 1 ? " time" : " times") + ", then");
            tally.space();
            target(tally, repeat.otherwise());
        });
    }

    private void target(Tag into, Name target) {
        Optional<Step> step = section.graph().step(target);
        if (step.isPresent()) {
            String label = plan.label(step.get());
            into.link(plan.anchor(step.get()), "way", "Go to step " + label).say("b", "", Words.ARROW + " " + label);
            into.space().say("span", "name", target.text());
        } else if (section.graph().isExit(target)) {
            into.say("b", "", "back").space().text("with: " + PlainText.phrase(target.text()));
        } else {
            into.text(Words.ARROW + " " + target.text() + " (not found)");
        }
    }
}

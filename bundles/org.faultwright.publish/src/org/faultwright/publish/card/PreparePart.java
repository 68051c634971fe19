/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.procedure.Condition;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.UsedDeclarations;

/** What to lay out before starting, and how the unit should then stand. */
final class PreparePart {
    private PreparePart() {
    }

    static void add(Tag body, CardPlan plan, UsedDeclarations used) {
        Tag section = body.add("section", "prepare");
        section.say("h2", "", "You will need");
        Tag list = section.add("ul", "ticks");
        Stream.of(BenchPreparation.instruments(plan, used), used.tools(), BenchPreparation.parts(used)).flatMap(List::stream)
                .forEach(line -> list.add("li").say("span", "box", Wording.BOX).space().text(line));
        List<String> arrival = BenchPreparation.onArrival(used);
        if (!arrival.isEmpty()) {
            section.say("h2", "", "Condition on arrival: check that each is so");
            row(section, arrival);
        }
    }

    /** Short things side by side. They are no list items: those would each need a line for themselves. */
    static void row(Tag section, List<String> things) {
        Tag row = section.add("p", "ticks");
        things.forEach(thing -> {
            row.add("span", "thing").say("span", "box", Wording.BOX).space().text(thing);
            row.space();
        });
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
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
        list(section, BenchPreparation.instruments(plan, used));
        titled(section, BenchPreparation.TOOLS, BenchPreparation.tools(used));
        titled(section, BenchPreparation.PARTS, BenchPreparation.parts(used));
        List<String> arrival = BenchPreparation.onArrival(used);
        if (!arrival.isEmpty()) {
            section.say("h2", "", "Condition on arrival: check that each is so");
            row(section, arrival);
        }
    }

    private static void titled(Tag section, String what, List<String> things) {
        if (!things.isEmpty()) {
            section.say("h3", "", what);
            list(section, things);
        }
    }

    private static void list(Tag section, List<String> things) {
        if (!things.isEmpty()) {
            Tag list = section.add("ul", "ticks");
            things.forEach(line -> list.add("li").say("span", "box", Wording.BOX).space().text(line));
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

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import org.faultwright.procedure.Condition;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Used;

/** What is looked over and signed before the unit leaves the bench. */
final class ClosingPart {
    private ClosingPart() {
    }

    static void add(Tag body, Plan plan, Used used) {
        Tag section = body.add("section", "closing");
        section.say("h2", "", "Before the unit leaves the bench");
        List<Condition> ends = used.conditions().stream().filter(condition -> condition.ends().isPresent()).toList();
        PreparePart.row(section, "Check that each is so", ends.stream()
                .map(condition -> Wording.named(condition) + " " + condition.ends().get().text()).toList());
        Tag table = section.add("table", "sign");
        Tag names = table.add("thead").add("tr");
        for (String name : List.of("Signed by", "Name", "Date")) {
            names.add("th").set("scope", "col").text(name);
        }
        Tag rows = table.add("tbody");
        for (String who : List.of("Technician", "Checked by")) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(who);
            row.say("td", "", "").say("td", "", "");
        }
        LimitZones.conventions(plan).forEach(words -> section.say("p", "small", words));
        Publication publication = plan.publication();
        section.say("p", "small", "Made from " + publication.procedure().name().text() + ", "
                + publication.revision() + ", SHA-256 " + publication.digest() + ".");
    }
}

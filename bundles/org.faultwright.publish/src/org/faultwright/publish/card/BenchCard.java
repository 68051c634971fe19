/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.stream.Collectors;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;
import org.faultwright.publish.plan.Used;

/** The one template of the bench card: for a browser. */
final class BenchCard {
    private BenchCard() {
    }

    static Page page(Plan plan) {
        Publication publication = plan.publication();
        Page page = new Page(Medium.SCREEN, publication.title(), "Bench card of "
                + publication.procedure().name().text() + ", " + publication.revision());
        Tag body = page.body();
        if (publication.hasErrors()) {
            body.add("div", "watermark").set("aria-hidden", "true").text("DRAFT");
        }
        Tag main = body.add("main");
        Used used = new Used(plan);
        HeadPart.add(main, plan);
        NotesPart.add(main, plan, used);
        PreparePart.add(main, plan, used);
        plan.sections().forEach(section -> steps(main, plan, section));
        ClosingPart.add(main, plan, used);
        return page;
    }

    private static void steps(Tag main, Plan plan, Section section) {
        StepPart part = new StepPart(plan);
        if (section.isRoutine()) {
            routine(main, plan, section);
        } else {
            main.say("h2", "", "Steps");
        }
        section.steps().forEach(step -> part.add(main, step));
    }

    private static void routine(Tag heading, Plan plan, Section section) {
        heading.add("h2", "routine").id(Plan.anchor(section)).text("Routine " + section.letter() + ": " + PaperCard.title(section.graph()));
        Tag from = heading.add("p", "from");
        from.text(plan.callers(section).size() == 1 ? "From step" : "From steps").space();
        NotesPart.links(from, plan.callers(section));
        from.text(". It ends with: " + section.graph().exits().stream().map(exit -> PlainText.phrase(exit.text()))
                .collect(Collectors.joining(", ")) + ".");
    }
}

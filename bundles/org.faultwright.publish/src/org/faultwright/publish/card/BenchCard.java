/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.stream.Collectors;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.ColumnLabels;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;

/** The one template of the bench card for a browser. It says the same as the card on paper, in the same words and the same order. */
final class BenchCard {
    private BenchCard() {
    }

    static Page page(CardPlan plan) {
        Publication publication = plan.publication();
        Page page = new Page(Medium.SCREEN, publication.title(), "Bench card: " + publication.title() + ", " + publication.revision());
        Tag body = page.body();
        if (publication.hasErrors()) {
            body.add("div", "watermark").set("aria-hidden", "true").text("DRAFT");
        }
        Tag main = body.add("main");
        UsedDeclarations used = new UsedDeclarations(plan);
        NotesPart notes = new NotesPart(plan, used);
        CardSources sources = new CardSources();
        HeadPart.add(main, plan);
        Tag front = main.add("div", "front");
        Tag before = front.add("div");
        notes.add(before);
        PreparePart.add(before, plan, used);
        FrontPart.add(front.add("div"), plan);
        steps(main, plan, new StepPart(plan, used, notes, sources));
        ClosingPart.add(main, plan, used, sources);
        ColumnLabels.add(page);
        return page;
    }

    private static void steps(Tag main, CardPlan plan, StepPart part) {
        List<PlacedStep> own = plan.sections().get(0).steps();
        if (!own.isEmpty()) {
            main.say("h2", "", "Steps: begin at 1. Tick what you see, go where its arrow says");
            if (plan.sections().stream().anyMatch(section -> plan.visits(section) > 1)) {
                main.say("p", "", Wording.TWICE);
            }
            main.say("p", "", Wording.WRONG);
        }
        own.forEach(step -> {
            part.add(main, step);
            plan.after(step).forEach(section -> routine(main, plan, section, part));
        });
        plan.afterAll().forEach(section -> routine(main, plan, section, part));
    }

    /** Marked by a line on its left, since the steps of the procedure go on behind it. */
    private static void routine(Tag main, CardPlan plan, CardSection section, StepPart part) {
        Tag box = main.add("section", "routine");
        box.add("h3", "heading").id(CardPlan.anchor(section)).text("Routine " + section.letter() + ": " + PaperCard.title(section.graph()));
        Tag from = box.add("p", "from");
        from.text("Came from step").space();
        int visits = plan.visits(section);
        for (int i = 0; i < visits; i++) {
            from.text(visits == 1 ? "" : Wording.VISITS.get(i) + "\u00A0").say("span", "fill", "").space();
        }
        from.text("(");
        NotesPart.links(from, plan.callers(section));
        from.text("). Ends with: " + section.graph().exits().stream().map(exit -> PlainText.phrase(exit.text()))
                .collect(Collectors.joining(", ")) + ".");
        part.visited(visits);
        section.steps().forEach(step -> part.add(box, step));
        part.visited(1);
    }
}

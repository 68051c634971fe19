/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.faultwright.procedure.Step;
import org.faultwright.publish.PlainText;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.RunningLines;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;
import org.faultwright.publish.plan.Used;

/** The one template of the bench card: the same page for the browser and for paper. */
final class BenchCard {
    private BenchCard() {
    }

    static Page page(Plan plan, Medium medium) {
        Publication publication = plan.publication();
        Page page = new Page(medium, publication.title(), "Bench card of "
                + publication.procedure().name().text() + ", " + publication.revision());
        Tag body = page.body();
        if (medium == Medium.PAPER) {
            RunningLines.add(page, publication.title(), publication.revision(),
                    (publication.hasErrors() ? "DRAFT \u00B7 " : "") + "SHA-256 " + publication.digest());
            bookmarks(page, plan);
        } else if (publication.hasErrors()) {
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

    private static void bookmarks(Page page, Plan plan) {
        Tag marks = page.head().add("bookmarks");
        plan.steps().forEach(step -> marks.add("bookmark").set("href", "#" + plan.anchor(step)).set("name",
                PlainText.line(plan.label(step) + " " + Words.title(step))));
    }

    private static void steps(Tag main, Plan plan, Section section) {
        group(main, plan, section, section.steps(), heading -> {
            if (section.isRoutine()) {
                routine(heading, plan, section);
            } else {
                heading.say("h2", "", "Steps");
            }
        });
        if (!section.endings().isEmpty()) {
            group(main, plan, section, section.endings(), heading -> heading.say("h2", "", "Conclusions"));
        }
    }

    /** A heading stays on the page of its first step. */
    private static void group(Tag main, Plan plan, Section section, List<Step> steps, Consumer<Tag> heading) {
        StepPart part = new StepPart(plan);
        Tag kept = main.add("div", "kept");
        heading.accept(kept);
        Tag into = kept;
        for (Step step : steps) {
            part.add(into, section, step);
            into = main;
        }
    }

    private static void routine(Tag heading, Plan plan, Section section) {
        heading.add("h2", "routine").id(Plan.anchor(section)).text("Routine " + section.letter() + ": " + title(section));
        Tag from = heading.add("p", "from");
        from.text(plan.callers(section).size() == 1 ? "From step" : "From steps").space();
        NotesPart.links(from, plan, plan.callers(section));
        from.text(". It ends with: " + section.graph().exits().stream().map(exit -> PlainText.phrase(exit.text()))
                .collect(Collectors.joining(", ")) + ".");
    }

    private static String title(Section section) {
        return section.graph().title().isBlank() ? section.graph().name().text() : section.graph().title();
    }
}

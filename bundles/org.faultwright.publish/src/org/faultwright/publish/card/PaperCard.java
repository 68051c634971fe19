/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;
import org.faultwright.publish.plan.UsedDeclarations;

/** The bench card on paper: front, steps in working order, routines, end. */
final class PaperCard {
    private PaperCard() {
    }

    /** @param whole what goes on over no page */
    static PrintDocument sheet(CardPlan plan, Paper paper, Set<StepRun> whole) {
        Publication publication = plan.publication();
        PrintDocument sheet = new PrintDocument(paper, paper.columns(), publication.title(), "Bench card of " + publication.procedure().name().text()
                + ", " + publication.revision(), publication.revision() + (publication.status() == Revision.Status.DRAFT ? ": do not work by it" : ""), (publication.hasErrors() ? "DRAFT \u00B7 " : "")
                + "SHA-256 " + publication.digest());
        Fo flow = sheet.flow();
        UsedDeclarations used = new UsedDeclarations(plan);
        Citations sources = new Citations();
        PaperNotes notes = new PaperNotes(used);
        PaperFront front = new PaperFront(plan, used, notes);
        front.head(flow, paper.room());
        front.columns(flow, paper.column());
        PaperStep steps = new PaperStep(plan, used, sources, notes, paper, whole);
        CardSection own = plan.sections().get(0);
        if (!own.steps().isEmpty()) {
            Fo head = Paint.heading(flow, "Steps: begin at 1. Tick what you see, go where its arrow says");
            if (plan.sections().stream().anyMatch(section -> plan.visits(section) > 1)) {
                Paint.line(flow).text(Wording.TWICE).set("keep-with-next.within-column", "always");
            }
            if (used.instruments().values().stream().anyMatch(measures -> !measures.isEmpty())) {
                Paint.line(flow).text(Wording.OVERLOAD).set("keep-with-next.within-column", "always");
            }
            Paint.line(flow).text(Wording.WRONG).set("keep-with-next.within-column", "always");
            if (plan.beginsOnFreshPage() && paper == Paper.A4) {
                head.set("break-before", "page");
            }
        }
        own.steps().forEach(step -> {
            steps.add(flow, step);
            plan.after(step).forEach(section -> routine(flow, plan, section, steps, whole));
        });
        plan.afterAll().forEach(section -> routine(flow, plan, section, steps, whole));
        PaperEnd.add(flow, plan, used, sources, paper.column());
        plan.placed().forEach(placed -> sheet.place(placed.anchor(), placed.anchor()));
        plan.places().forEach(sheet::place);
        plan.sections().forEach(section -> section.steps().forEach(step -> sheet.bookmark(step.anchor(), step.label() + " " + Wording.title(step.step()))));
        return sheet;
    }

    /** Marked by a line on its left, since the steps of the procedure go on behind it. */
    private static void routine(Fo into, CardPlan plan, CardSection section, PaperStep steps, Set<StepRun> whole) {
        Fo flow = into.add("block", "border-left", "2pt solid " + Paint.LINE, "padding-left", "1.2mm", "margin-left", "0mm", "space-after", "2mm");
        if (whole.contains(section.steps().get(0).run())) {
            flow.set("keep-together.within-page", "always");
        }
        Fo head = flow.add("block", "id", CardPlan.anchor(section), "keep-with-next.within-column", "always");
        Paint.heading(head, "Routine " + section.letter() + ": " + title(section.graph()));
        Fo from = Paint.line(head);
        from.text("Came from step ");
        int visits = plan.visits(section);
        for (int i = 0; i < visits; i++) {
            from.text(visits == 1 ? "" : (i == 0 ? "" : " ") + Wording.VISITS.get(i) + " ").add("leader", "leader-pattern", "rule", "leader-length", "10mm", "rule-thickness", "0.6pt");
        }
        from.text(" (" + plan.callers(section).stream().map(PlacedStep::label).collect(Collectors.joining(", ")) + "). Ends with: "
                + section.graph().exits().stream().map(exit -> PlainText.phrase(exit.text())).collect(Collectors.joining(", ")) + ".");
        steps.visited(visits);
        section.steps().forEach(step -> steps.add(flow, step));
        steps.visited(1);
    }

    static String title(StepGraph graph) {
        return graph.title().isBlank() ? graph.name().text() : graph.title();
    }
}

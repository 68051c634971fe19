/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;

/** What a card is for, which revision it is, and the job it is used on. */
final class HeadPart {
    private HeadPart() {
    }

    static void add(Tag body, CardPlan plan) {
        Publication publication = plan.publication();
        Procedure procedure = plan.procedure();
        Tag head = body.add("header", "head");
        head.say("p", "what", "Bench card");
        head.say("h1", "", publication.title());
        procedure.equipment().ifPresent(equipment -> head.say("p", "equipment", Wording.equipment(equipment)));
        if (!procedure.complaints().isEmpty()) {
            head.add("p", "complaints").say("b", "", "Complaints such as").space().text(procedure.complaints().stream()
                    .map(complaint -> "\u201C" + complaint.value() + "\u201D").collect(Collectors.joining(", ")));
        }
        Tag revision = head.add("p", "revision");
        revision.say("b", publication.status() == Revision.Status.DRAFT ? "draft" : "", publication.revision());
        revision.space().text(Wording.record(procedure) + " \u00B7 digest " + publication.shortDigest());
        if (publication.status() == Revision.Status.DRAFT) {
            head.say("p", "draftline", "Draft: neither reviewed nor released. Do not work by it.");
        }
        head.say("p", "small", "Nothing on this page can be typed or ticked: it is read, or printed and filled in by hand. The bench page leads through the same"
                + " steps one by one and keeps a record.");
        job(head);
        if (publication.hasErrors()) {
            open(body, publication);
        }
    }

    private static void job(Tag head) {
        Tag table = head.add("table", "job");
        Tag names = table.add("thead").add("tr");
        Tag blanks = table.add("tbody").add("tr");
        for (String name : Wording.JOB) {
            names.add("th").set("scope", "col").text(name);
            blanks.add("td").text("");
        }
    }

    /** What must be put right before this becomes a card to work by. */
    private static void open(Tag body, Publication publication) {
        Tag box = body.add("section", "open");
        box.say("h2", "", "Draft with open errors: do not work by this");
        Tag list = box.add("ul");
        for (Finding finding : publication.errors()) {
            Tag item = list.add("li");
            item.text(finding.message()).space().text(finding.advice()).space();
            item.say("span", "place", "At " + publication.place(finding) + ", " + finding.rule() + ".");
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;

/** What is filled in, looked over and signed before the unit leaves the bench. */
final class ClosingPart {
    private ClosingPart() {
    }

    static void add(Tag body, CardPlan plan, UsedDeclarations used, CardSources sources) {
        Tag section = body.add("section", "closing");
        section.add("h2").id(StepPart.CLOSE).text("Close the job");
        faults(section, plan);
        written(section, "Parts used");
        written(section, "Remarks");
        section.say("h2", "", "Before the unit leaves the bench");
        List<Condition> ends = used.conditions().stream().filter(condition -> condition.ends().isPresent()).toList();
        if (!ends.isEmpty()) {
            PreparePart.row(section, ends.stream().map(condition -> Wording.named(condition) + " " + condition.ends().get().text()).toList());
        }
        protective(section, plan);
        sign(section);
        sources.list(section);
        LimitZones.conventions(plan).forEach(words -> section.say("p", "small", words));
        Publication publication = plan.publication();
        section.say("p", "small", publication.revision() + ", SHA-256 " + publication.digest() + ".");
    }

    private static void faults(Tag section, CardPlan plan) {
        section.say("p", "", "Which fault was it? Tick each that it may be.");
        Tag list = section.add("ul", "ticks");
        plan.likely().cases().forEach(one -> list.add("li").say("span", "box", Wording.BOX).space().text(PaperFront.title(one.fault())));
        list.add("li").say("span", "box", Wording.BOX).space().text("None found");
        list.add("li").say("span", "box", Wording.BOX).space().text("Another:").space().say("span", "fill", "");
    }

    private static void written(Tag section, String what) {
        section.say("p", "writing", what);
        section.say("p", "writing", "");
    }

    /** The tests after a repair, with where they are done; each result is written down. */
    private static void protective(Tag section, CardPlan plan) {
        Map<ProtectiveTest, List<PlacedStep>> tests = new EnumMap<>(ProtectiveTest.class);
        plan.placed().forEach(placed -> placed.step().frame().precautions().tests()
                .forEach(test -> tests.computeIfAbsent(test.value(), none -> new ArrayList<>()).add(placed)));
        if (!tests.isEmpty()) {
            section.say("p", "", "Write down what each test gave that your way came by. A test belongs to its way: do none on its own.");
        }
        tests.forEach((test, places) -> {
            Tag line = section.add("p", "line");
            line.say("span", "box", Wording.BOX).space().text("Test of " + test.spoken() + ", step").space();
            for (int i = 0; i < places.size(); i++) {
                line.text(i == 0 ? "" : "or").space();
                FrontPart.arrow(line, places.get(i));
                line.space();
            }
            places.stream().flatMap(placed -> CardResult.expected(placed.step()).stream()).map(Wording::printed).distinct()
                    .forEach(limit -> line.space().say("b", "", limit));
            line.space().say("span", "fill", "").space().say("span", "box", Wording.BOX).space().text("not on the way");
        });
    }

    private static void sign(Tag section) {
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
    }
}

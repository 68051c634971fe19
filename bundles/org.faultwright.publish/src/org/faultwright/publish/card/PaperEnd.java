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
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.LikelyFaults;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;

/** The end of a printed card: what is filled in, looked over and signed before the unit leaves the bench. */
final class PaperEnd {
    static final String ANCHOR = "close-the-job";
    private static final int WRITING_LINES = 2;

    private PaperEnd() {
    }

    static void add(Fo flow, CardPlan plan, UsedDeclarations used, Citations sources, double width) {
        Fo box = flow.add("block", "id", ANCHOR, "keep-together.within-column", "always");
        Paint.heading(box, "Close the job");
        faults(box, plan);
        written(box, "Parts used");
        written(box, "Remarks");
        Fo closing = flow.add("block", "keep-together.within-column", "always");
        Paint.heading(closing, "Before the unit leaves the bench");
        List<Condition> ends = used.conditions().stream().filter(condition -> condition.ends().isPresent()).toList();
        if (!ends.isEmpty()) {
            Fo line = Paint.line(closing);
            ends.forEach(condition -> line.verbatim(Wording.BOX + "\u00A0")
                    .whole(Wording.named(condition) + " " + condition.ends().get().text()).verbatim("\u2002 "));
        }
        protective(closing, plan);
        sign(closing, width);
        sources.list(flow);
        LimitZones.conventions(plan).forEach(words -> Paint.line(flow).text(words).set("space-before", "1mm"));
    }

    private static void faults(Fo box, CardPlan plan) {
        Paint.line(box, "Which fault was it? Tick each that it may be.");
        Paint.boxes(box, plan.likely().cases().stream().map(LikelyFaults.Case::fault).map((Fault fault) -> PaperFront.title(fault)).toList());
        Fo others = Paint.boxesInRow(box, List.of("None found", "Another:"));
        others.verbatim("\u00A0").add("leader", "leader-pattern", "rule", "leader-length", "35mm", "rule-thickness", "0.6pt", "color", Paint.LINE);
    }

    private static void written(Fo box, String what) {
        for (int i = 0; i < WRITING_LINES; i++) {
            Fo line = box.add("block", "border-bottom", "0.6pt solid " + Paint.LINE, "line-height", "17pt", "color", Paint.FAINT, "role", i == 0 ? "P" : "artifact");
            line.verbatim(i == 0 ? what : "\u00A0");
        }
    }

    /** The tests after a repair, with where they are done; each result is written down. */
    private static void protective(Fo box, CardPlan plan) {
        Map<ProtectiveTest, List<PlacedStep>> tests = new EnumMap<>(ProtectiveTest.class);
        plan.placed().forEach(placed -> placed.step().frame().precautions().tests()
                .forEach(test -> tests.computeIfAbsent(test.value(), none -> new ArrayList<>()).add(placed)));
        if (!tests.isEmpty()) {
            Paint.line(box, "Write down what each test gave that your way came by. A test belongs to its way: do none on its own.");
        }
        tests.forEach((test, places) -> {
            Fo line = Paint.line(box);
            line.verbatim(Wording.BOX + "\u00A0").text("Test of " + test.spoken() + ", step ");
            for (int i = 0; i < places.size(); i++) {
                line.text(i == 0 ? "" : " or ");
                Paint.arrow(line, places.get(i));
            }
            places.stream().flatMap(placed -> CardResult.expected(placed.step()).stream()).map(Wording::printed).distinct()
                    .forEach(limit -> Paint.bold(line.verbatim(" "), limit));
            line.verbatim("\u00A0________ " + Wording.BOX + "\u00A0").whole("not on the way");
        });
    }

    private static void sign(Fo box, double width) {
        Fo table = box.add("table", "table-layout", "fixed", "width", "100%", "space-before", "1.5mm");
        double[] widths = { width * 0.24, width * 0.5, width * 0.26 };
        for (double column : widths) {
            table.add("table-column", "column-width", PrintDocument.mm(column));
        }
        Fo head = table.add("table-header").add("table-row");
        List.of("Signed by", "Name", "Date").forEach(word -> head.add("table-cell").add("block", "color", Paint.FAINT).text(word));
        Fo rows = table.add("table-body");
        for (String who : List.of("Technician", "Checked by")) {
            Fo row = rows.add("table-row", "height", "10mm");
            row.add("table-cell", "border", "0.6pt solid " + Paint.LINE, "padding", "0.6mm").add("block").text(who);
            row.add("table-cell", "border", "0.6pt solid " + Paint.LINE).add("block");
            row.add("table-cell", "border", "0.6pt solid " + Paint.LINE).add("block");
        }
    }
}

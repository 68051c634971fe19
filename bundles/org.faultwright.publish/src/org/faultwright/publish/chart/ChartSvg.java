/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.PlainText;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Published;
import org.faultwright.publish.page.SvgText;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;

/** The steps as a picture: a tree of what follows what, with the numbers of the card. */
public final class ChartSvg implements ProcedureExport {
    private static final int MARGIN = 24;
    private static final int HEADING = 34;

    @Override
    public String name() {
        return "chart-svg";
    }

    @Override
    public String title() {
        return "Chart of the steps, SVG";
    }

    @Override
    public Published publish(Publication publication) {
        Plan plan = new Plan(publication);
        Map<Section, List<Layout>> sections = new LinkedHashMap<>();
        int top = MARGIN + 70;
        int width = 700;
        for (Section section : plan.sections()) {
            List<Layout> layouts = new ArrayList<>();
            top += HEADING;
            for (Branch tree : Branch.of(section.graph())) {
                Layout layout = new Layout(tree, top);
                layouts.add(layout);
                top = layout.bottom() + HEADING / 2;
                width = Math.max(width, layout.right() + 2 * MARGIN);
            }
            sections.put(section, layouts);
            top += HEADING / 2;
        }
        SvgText svg = new SvgText(width, top + MARGIN, publication.title(), "Chart of the steps of "
                + publication.procedure().name().text() + ", " + publication.revision() + ". " + Caution.SENTENCES);
        head(svg, publication, width);
        sections.forEach((section, layouts) -> draw(svg, plan, section, layouts));
        return new Published(FileName.of(publication.procedure(), ".svg"), "image/svg+xml", svg.bytes());
    }

    private static void head(SvgText svg, Publication publication, int width) {
        int room = width - 2 * MARGIN;
        svg.text(MARGIN, MARGIN + 14, 22, "font-weight=\"bold\" fill=\"#16242c\"", room, publication.title());
        svg.text(MARGIN, MARGIN + 36, 12, "fill=\"#3f4f58\"", room, (publication.hasErrors()
                ? "DRAFT WITH OPEN ERRORS \u00B7 " : "") + publication.revision() + " \u00B7 digest " + publication.shortDigest());
        svg.text(MARGIN, MARGIN + 54, 11, "fill=\"#3f4f58\"", room, Caution.SENTENCES);
    }

    private static void draw(SvgText svg, Plan plan, Section section, List<Layout> layouts) {
        for (Layout layout : layouts) {
            if (layout == layouts.get(0)) {
                String heading = section.isRoutine() ? "Routine " + section.letter() + ": " + section.graph().title() : "Steps";
                svg.text(MARGIN, layout.boxes().get(0).y() - 10, 15, "font-weight=\"bold\" fill=\"#0b4a57\"",
                        40 * 15, heading);
            }
            layout.boxes().forEach(box -> arrows(svg, layout, box));
            layout.boxes().forEach(box -> box(svg, plan, section, box));
        }
    }

    private static void arrows(SvgText svg, Layout layout, Layout.Box box) {
        for (int i = 0; i < box.branch().ways().size(); i++) {
            int row = box.row(i);
            box.branch().ways().get(i).child().map(layout::box).ifPresent(child -> svg.arrow(
                    MARGIN + box.x() + Layout.BOX_WIDTH, row, MARGIN + child.x(), child.y() + 16));
        }
    }

    private static void box(SvgText svg, Plan plan, Section section, Layout.Box box) {
        Step step = box.branch().step();
        boolean end = step instanceof Step.Conclude;
        int x = MARGIN + box.x();
        svg.box(x, box.y(), Layout.BOX_WIDTH, box.height(), end
                ? "fill=\"#eef4ea\" stroke=\"#3c6e1f\" stroke-width=\"1.6\"" : "fill=\"#ffffff\" stroke=\"#0b4a57\"");
        svg.box(x, box.y(), 34, 22, end ? "fill=\"#3c6e1f\"" : "fill=\"#0b4a57\"");
        svg.text(x + 17, box.y() + 16, 14, "font-weight=\"bold\" fill=\"#ffffff\" text-anchor=\"middle\"", 60,
                plan.label(step));
        svg.text(x + 40, box.y() + 15, 11, "fill=\"#3f4f58\"", Layout.BOX_WIDTH - 44, step.name().text());
        svg.lines(x + 6, box.y() + 36, 12, "font-weight=\"bold\" fill=\"#16242c\"", Layout.BOX_WIDTH - 12,
                step.title().isBlank() ? step.name().text() : step.title());
        for (int i = 0; i < box.branch().ways().size(); i++) {
            Outcome outcome = box.branch().ways().get(i).outcome();
            int baseline = box.row(i) + 4;
            svg.text(x + 6, baseline, 11, "fill=\"#16242c\"", Layout.BOX_WIDTH - 106,
                    PlainText.phrase(outcome.key()));
            svg.text(x + Layout.BOX_WIDTH - 6, baseline, 11, "font-weight=\"bold\" fill=\"#0b4a57\" text-anchor=\"end\"", 120,
                    target(plan, section, outcome));
        }
    }

    private static String target(Plan plan, Section section, Outcome outcome) {
        String arrow = "\u2192 " + outcome.target().map(name -> label(plan, section, name)).orElse("?");
        return outcome.repeat().map(repeat -> repeat.atMost() + "\u00D7 " + arrow + ", then "
                + label(plan, section, repeat.otherwise())).orElse(arrow);
    }

    private static String label(Plan plan, Section section, Name name) {
        return section.graph().step(name).map(plan::label).orElse(section.graph().isExit(name) ? "back" : "?");
    }
}

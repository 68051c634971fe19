/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Used;
import org.faultwright.quantity.MeterRange;

/** What to lay out before starting, and how the unit should then stand. */
final class PreparePart {
    private PreparePart() {
    }

    static void add(Tag body, Plan plan, Used used) {
        Tag section = body.add("section", "prepare");
        section.say("h2", "", "You will need");
        list(section, "Instruments", used.instruments().entrySet().stream()
                .map(entry -> instrument(plan, entry.getKey(), entry.getValue())).toList());
        row(section, "Tools", used.tools());
        row(section, "Parts that are handled", used.parts().stream().map(PreparePart::part).toList());
        List<Condition> conditions = used.conditions();
        if (!conditions.isEmpty()) {
            section.say("h2", "", "Condition on arrival");
            row(section, "Check that each is so", conditions.stream()
                    .flatMap(condition -> start(condition)
                            .map(value -> Wording.named(condition) + " " + value.text())).toList());
        }
        section.add("p", "how").say("b", "", "How to go on:").space().text("Start at step 1. Tick the result you see and go"
                + " to the step behind its arrow. Where a step sends you to a lettered routine, follow that to its"
                + " end, then come back to the step you left.");
    }

    private static Stream<Name> start(Condition condition) {
        return condition.starts().or(() -> condition.values().stream().findFirst()).stream();
    }

    private static String instrument(Plan plan, Instrument instrument, List<Step.Measure> measures) {
        String title = instrument.title().isBlank() ? instrument.name().text() : instrument.title();
        String uses = measures.stream().flatMap(measure -> use(plan, measure).stream()).distinct()
                .collect(Collectors.joining("; "));
        String due = instrument.calibrationDue().map(day -> "; calibrated until " + day.value()).orElse("");
        return title + (uses.isEmpty() ? "" : ": " + uses) + due;
    }

    private static List<String> use(Plan plan, Step.Measure measure) {
        return measure.kind().map(kind -> kind.value().words() + LimitStudy.of(plan.procedure(), measure)
                .map(LimitStudy::range).map(MeterRange::upTo).map(upTo -> ", range " + Wording.printed(upTo)).orElse("")).stream().toList();
    }

    private static String part(Part part) {
        String title = part.title().isBlank() ? part.name().text() : part.title();
        String hazards = part.hazards().stream().map(hazard -> hazard.value().inWords())
                .collect(Collectors.joining(", "));
        return title + part.number().map(number -> ", no. " + number.value()).orElse("")
                + part.stock().map(stock -> ", have " + stock.value() + " at hand").orElse("")
                + (hazards.isEmpty() ? "" : " (" + hazards + ")");
    }

    private static void list(Tag section, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            section.say("h3", "", heading);
            Tag list = section.add("ul", "ticks");
            lines.forEach(line -> list.add("li").say("span", "box", Wording.BOX).space().text(line));
        }
    }

    /** Short things side by side. They are no list items: those would each need a line for themselves. */
    static void row(Tag section, String heading, List<String> things) {
        if (!things.isEmpty()) {
            section.say("h3", "", heading);
            Tag row = section.add("p", "ticks");
            things.forEach(thing -> {
                row.add("span", "thing").say("span", "box", Wording.BOX).space().text(thing);
                row.space();
            });
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
        Tag list = section.add("ul", "ticks");
        Stream.of(used.instruments().entrySet().stream().map(entry -> instrument(plan, entry.getKey(), entry.getValue())), used.tools().stream(),
                used.parts().stream().map(PreparePart::part)).flatMap(all -> all)
                .forEach(line -> list.add("li").say("span", "box", Wording.BOX).space().text(line));
        List<String> arrival = used.conditions().stream().flatMap(condition -> start(condition)
                .map(value -> Wording.named(condition) + " " + value.text())).toList();
        if (!arrival.isEmpty()) {
            section.say("h2", "", "Condition on arrival: check that each is so");
            row(section, arrival);
        }
    }

    private static Stream<Name> start(Condition condition) {
        return condition.starts().or(() -> condition.values().stream().findFirst()).stream();
    }

    private static String instrument(Plan plan, Instrument instrument, List<Step.Measure> measures) {
        String title = instrument.title().isBlank() ? instrument.name().text() : instrument.title();
        Map<String, Set<String>> ranges = new LinkedHashMap<>();
        for (Step.Measure measure : measures) {
            measure.kind().ifPresent(kind -> {
                Set<String> own = ranges.computeIfAbsent(kind.value().words(), none -> new LinkedHashSet<>());
                measure.range().map(range -> Wording.printed(range.value())).or(() -> LimitStudy.of(plan.procedure(), measure).map(LimitStudy::range)
                        .map(MeterRange::upTo).map(Wording::printed)).ifPresent(own::add);
            });
        }
        List<String> uses = new ArrayList<>();
        ranges.forEach((kind, upTo) -> uses.add(kind + (upTo.isEmpty() ? "" : " " + String.join(" and ", upTo))));
        String due = instrument.calibrationDue().map(day -> "; calibrated until " + day.value()).orElse("");
        return title + (uses.isEmpty() ? "" : ": " + String.join("; ", uses)) + due;
    }

    private static String part(Part part) {
        String title = part.title().isBlank() ? part.name().text() : part.title();
        String hazards = part.hazards().stream().map(hazard -> hazard.value().inWords())
                .collect(Collectors.joining(", "));
        return title + part.number().map(number -> ", part no. " + number.value()).orElse("")
                + part.stock().map(stock -> ", " + stock.value() + " at hand").orElse("")
                + (hazards.isEmpty() ? "" : " (" + hazards + ")");
    }

    /** Short things side by side. They are no list items: those would each need a line for themselves. */
    static void row(Tag section, List<String> things) {
        Tag row = section.add("p", "ticks");
        things.forEach(thing -> {
            row.add("span", "thing").say("span", "box", Wording.BOX).space().text(thing);
            row.space();
        });
    }
}

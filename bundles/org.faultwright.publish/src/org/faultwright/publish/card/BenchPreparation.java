/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.UsedDeclarations;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;

/** What must be at hand, and how the unit must stand, before the first step: the same words on paper and on the screen. */
final class BenchPreparation {
    static final String TOOLS = "Tools, supplies";
    static final String PARTS = "Parts";

    private BenchPreparation() {
    }

    /** Each with what it reads, up to where, and when its calibration runs out. */
    static List<String> instruments(CardPlan plan, UsedDeclarations used) {
        return used.instruments().entrySet().stream().map(entry -> instrument(plan, entry.getKey(), entry.getValue())).toList();
    }

    /** What comes back from the bench: tools with what they use up, as the text lists them, and a part that only lets a charge drain. */
    static List<String> tools(UsedDeclarations used) {
        return Stream.concat(used.tools().stream(), used.parts().stream().filter(BenchPreparation::isTool).map(BenchPreparation::part)).toList();
    }

    /** What may stay in the unit, or is put to it for a try. */
    static List<String> parts(UsedDeclarations used) {
        return used.parts().stream().filter(part -> !isTool(part)).map(BenchPreparation::part).toList();
    }

    private static boolean isTool(Part part) {
        return part.drains().isPresent();
    }

    static List<String> onArrival(UsedDeclarations used) {
        return used.conditions().stream().flatMap(condition -> start(condition).map(value -> Wording.named(condition) + " " + value.text())).toList();
    }

    private static Stream<Name> start(Condition condition) {
        return condition.starts().or(() -> condition.values().stream().findFirst()).stream();
    }

    private static String instrument(CardPlan plan, Instrument instrument, List<Step.Measure> measures) {
        String title = instrument.title().isBlank() ? instrument.name().text() : instrument.title();
        Map<String, List<Quantity>> ranges = new LinkedHashMap<>();
        for (Step.Measure measure : measures) {
            measure.kind().ifPresent(kind -> {
                List<Quantity> own = ranges.computeIfAbsent(kind.value().words(), none -> new ArrayList<>());
                measure.range().map(range -> range.value()).or(() -> LimitStudy.of(plan.procedure(), measure).map(LimitStudy::range).map(MeterRange::upTo)).ifPresent(own::add);
            });
        }
        List<String> uses = new ArrayList<>();
        // the smallest first, as on the instrument
        ranges.forEach((kind, upTo) -> uses.add(upTo.stream().sorted(Comparator.comparing(Quantity::difference)).map(Wording::printed).distinct()
                .collect(Collectors.joining(" and ", upTo.isEmpty() ? kind : kind + " ", ""))));
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
}

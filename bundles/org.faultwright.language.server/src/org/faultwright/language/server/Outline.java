/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.ThingKind;

/** The parts of a text in reading order. */
public final class Outline {
    private Outline() {
    }

    public static List<OutlineItem> of(Document document) {
        List<OutlineItem> items = new ArrayList<>();
        document.own().byKind().forEach((kind, declared) -> declared.forEach(one -> items.add(one instanceof Routine routine ? routine(routine) : item(kind, kind.keyword(), one))));
        if (document instanceof Procedure procedure) {
            add(items, ThingKind.FAULT, procedure.faults());
            procedure.writtenSteps().forEach(step -> items.add(step(step)));
            procedure.examples().forEach(example -> items.add(new OutlineItem(ThingKind.EXAMPLE, ThingKind.EXAMPLE.keyword(), example.title().text(), "",
                    example.at(), example.title().at(), List.of())));
        }
        items.removeIf(item -> item.label().isEmpty());
        items.sort(Comparator.comparingInt(item -> item.at().offset()));
        return List.copyOf(items);
    }

    private static OutlineItem routine(Routine routine) {
        return new OutlineItem(ThingKind.ROUTINE, ThingKind.ROUTINE.keyword(), routine.name().text(), routine.title(), routine.at(), routine.name().at(),
                routine.steps().stream().map(Outline::step).toList());
    }

    private static OutlineItem step(Step step) {
        return item(ThingKind.STEP, step.keyword(), step);
    }

    private static void add(List<OutlineItem> items, ThingKind kind, List<? extends Declaration> declared) {
        declared.forEach(one -> items.add(item(kind, kind.keyword(), one)));
    }

    private static OutlineItem item(ThingKind kind, String keyword, Declaration one) {
        return new OutlineItem(kind, keyword, one.name().text(), one.title(), one.at(), one.name().at(), List.of());
    }
}

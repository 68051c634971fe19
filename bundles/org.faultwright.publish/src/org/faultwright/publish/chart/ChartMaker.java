/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Gives every step of a text its box and every result its arrow. */
public final class ChartMaker {
    private static final int HEADING = 26;
    private static final int BETWEEN_PARTS = 34;
    /** Deeper than anybody opens boxes; a routine that performs itself could be opened without end. */
    private static final int DEEPEST = 12;

    /** What is drawn for itself. @param heading over it; empty for none @param path what the keys of its steps begin with */
    public record Part(String heading, String path, StepGraph graph) {
    }

    private final Scope scope;
    private final Predicate<String> open;
    private final BiFunction<String, Step, String> number;
    private final BooleanSupplier cancelled;
    private final Set<String> keys = new HashSet<>();

    private ChartMaker(Scope scope, Predicate<String> open, BiFunction<String, Step, String> number, BooleanSupplier cancelled) {
        this.scope = scope;
        this.open = open;
        this.number = number;
        this.cancelled = cancelled;
    }

    /**
     * The parts one under another.
     *
     * @param open      whether the routine that the step with this key performs is shown in its box
     * @param number    the number of the step with a key, or nothing
     * @param cancelled asked now and then
     * @throws CancellationException once it says so
     */
    public static Chart of(List<Part> parts, Scope scope, Predicate<String> open, BiFunction<String, Step, String> number,
            BooleanSupplier cancelled) {
        ChartMaker maker = new ChartMaker(scope, open, number, cancelled);
        List<Chart.Heading> headings = new ArrayList<>();
        List<ChartBox> boxes = new ArrayList<>();
        List<ChartArrow> arrows = new ArrayList<>();
        int width = 0;
        int top = 0;
        for (Part part : parts) {
            if (!part.heading().isEmpty()) {
                headings.add(new Chart.Heading(part.heading(), 0, top + HEADING - 10));
                top += HEADING;
            }
            Chart chart = maker.chart(part.graph(), part.path(), 0);
            int down = top;
            chart.boxes().forEach(box -> boxes.add(box.at(box.x(), box.y() + down)));
            chart.arrows().forEach(arrow -> arrows.add(arrow.moved(0, down)));
            width = Math.max(width, chart.width());
            top += chart.height() + BETWEEN_PARTS;
        }
        return new Chart(width, Math.max(0, top - BETWEEN_PARTS), List.copyOf(headings), List.copyOf(boxes), List.copyOf(arrows));
    }

    private Chart chart(StepGraph graph, String path, int depth) {
        Map<Step, String> named = new IdentityHashMap<>();
        List<Step> order = order(graph);
        order.forEach(step -> named.put(step, key(path + step.name().text())));
        Map<String, Chart> inside = new HashMap<>();
        List<ChartBox> boxes = new ArrayList<>();
        Set<Step> led = ledTo(graph);
        for (Step step : order) {
            String key = named.get(step);
            Optional<Routine> routine = scope.performedBy(step);
            routine.filter(one -> depth < DEEPEST && !one.steps().isEmpty() && open.test(key))
                    .ifPresent(one -> inside.put(key, chart(one, key + "/", depth + 1)));
            boxes.add(BoxWords.box(key, step, graph, graph.first().filter(first -> first == step).isPresent(), led.contains(step), routine,
                    Optional.ofNullable(inside.get(key)), number.apply(key, step)));
        }
        List<LayeredPlaces.Link> links = new ArrayList<>();
        for (Step step : order) {
            for (int i = 0; i < step.outcomes().size(); i++) {
                Outcome outcome = step.outcomes().get(i);
                link(links, named, graph, step, i, outcome.target(), false);
                link(links, named, graph, step, i, outcome.repeat().map(Outcome.Repeat::otherwise), true);
            }
        }
        return filled(LayeredPlaces.of(boxes, links, cancelled), inside);
    }

    /** The steps that some result leads to. */
    private static Set<Step> ledTo(StepGraph graph) {
        Set<Step> led = Collections.newSetFromMap(new IdentityHashMap<>());
        graph.steps().stream().flatMap(step -> step.outcomes().stream())
                .flatMap(outcome -> Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream()))
                .forEach(name -> graph.step(name).ifPresent(led::add));
        return led;
    }

    private static void link(List<LayeredPlaces.Link> links, Map<Step, String> named, StepGraph graph, Step from, int cell, Optional<Name> to,
            boolean otherwise) {
        to.flatMap(graph::step).map(named::get)
                .ifPresent(target -> links.add(new LayeredPlaces.Link(named.get(from), cell, target, otherwise)));
    }

    /** What stands in opened boxes is put into them, each time behind its box. */
    private static Chart filled(Chart outer, Map<String, Chart> inside) {
        if (inside.isEmpty()) {
            return outer;
        }
        List<ChartBox> boxes = new ArrayList<>();
        List<ChartArrow> arrows = new ArrayList<>(outer.arrows());
        for (ChartBox box : outer.boxes()) {
            boxes.add(box);
            Chart within = inside.get(box.key());
            if (within != null) {
                int right = box.x() + (box.width() - within.width()) / 2;
                int down = box.cellTop() - box.body() + ChartBox.PADDING;
                within.boxes().forEach(one -> boxes.add(one.at(one.x() + right, one.y() + down)));
                within.arrows().forEach(one -> arrows.add(one.moved(right, down)));
            }
        }
        return new Chart(outer.width(), outer.height(), List.of(), boxes, arrows);
    }

    /** A name that is declared twice has two boxes. */
    private String key(String wanted) {
        String key = wanted;
        for (int again = 2; !keys.add(key); again++) {
            key = wanted + "#" + again;
        }
        return key;
    }

    /** From where it begins, each step where it is first come to, then what nothing leads to: the order that the layout goes by. */
    private static List<Step> order(StepGraph graph) {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Step> order = new ArrayList<>();
        Deque<Step> next = new ArrayDeque<>();
        List<Step> roots = new ArrayList<>();
        graph.first().ifPresent(roots::add);
        roots.addAll(graph.steps());
        for (Step root : roots) {
            if (met.add(root)) {
                next.add(root);
            }
            while (!next.isEmpty()) {
                Step step = next.remove();
                order.add(step);
                for (Outcome outcome : step.outcomes()) {
                    outcome.target().flatMap(graph::step).filter(met::add).ifPresent(next::add);
                    outcome.repeat().map(Outcome.Repeat::otherwise).flatMap(graph::step).filter(met::add).ifPresent(next::add);
                }
            }
        }
        return order;
    }
}

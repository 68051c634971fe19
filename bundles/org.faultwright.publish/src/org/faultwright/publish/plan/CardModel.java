/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.Collections;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A card of A4 as it would be set, reckoned with the rooms of its steps: on which page each stands, and how often a repair turns the page. */
final class CardModel {
    /** In millimetres: a column, the head of the first page, the heading of the steps. */
    private static final double COLUMN = 269;
    private static final double HEAD = 40.5;
    private static final double HEADING = 12;
    private static final int COLUMNS = 2;
    /** How much longer than reckoned a card usually turns out, and what is left of a page that a step surely does not go on. */
    private static final double USUAL = 1.015;
    private static final double SURE = 30;
    private static final int LONGEST_IN_PLACE = 14;
    private static final int ENDLESS = 10_000;
    private static final int DEEPEST = 8;

    /** One step of the procedure or a routine. */
    private static final class Node {
        final Step step;
        final double room;
        final double roomInside;
        double sending;
        double sendingInside;
        Graph routine;
        boolean plain;
        int site = -1;
        /** Among all steps, and in the order of its own graph. */
        final int number;
        int place;

        Node(Step step, int number, StepRoom rooms) {
            this.step = step;
            this.number = number;
            this.room = rooms.of(step, false);
            this.roomInside = rooms.of(step, true);
        }
    }

    private record Taken(Node node, String outcome) {
    }

    private static final class Graph {
        final StepGraph graph;
        final int index;
        final double heading;
        List<Node> order = List.of();
        final Map<String, List<Taken>> ways = new HashMap<>();

        Graph(StepGraph graph, int index, double heading) {
            this.graph = graph;
            this.index = index;
            this.heading = heading;
        }
    }

    /**
     * @param paths   in which order the ways to the faults are followed for the order of the steps
     * @param inPlace by the number of the performing step
     * @param after   by the number of the routine, the place of a step in the order; the last but for those
     */
    record State(int[] paths, List<Node> order, boolean[] inPlace, int[] after) {
    }

    /** @param length in pages, the last one as far as it is filled @param turns of each case */
    record Pages(double length, int[] turns) {
    }

    private final Procedure procedure;
    private final List<List<Step>> paths;
    private final double[] weights;
    private final List<Graph> graphs = new ArrayList<>();
    private final Map<String, Graph> routines = new LinkedHashMap<>();
    private final Map<Step, Node> nodes = new IdentityHashMap<>();
    private final Map<Routine, Integer> lengths = new IdentityHashMap<>();
    private final List<Node> sites = new ArrayList<>();
    private final List<List<Taken>> ways = new ArrayList<>();
    private final double front;
    private final double[] end;

    CardModel(Procedure procedure, Likely likely) {
        this.procedure = procedure;
        this.paths = likely.paths();
        StepRoom rooms = new StepRoom(procedure);
        Graph own = new Graph(procedure, 0, HEADING);
        graphs.add(own);
        for (int i = 0; i < graphs.size(); i++) {
            for (Step step : graphs.get(i).graph.steps()) {
                add(step, rooms);
            }
        }
        graphs.forEach(graph -> graph.order = WorkingOrder.of(graph.graph, graph == own ? paths : List.of()).stream().map(nodes::get).toList());
        graphs.forEach(graph -> {
            for (int i = 0; i < graph.order.size(); i++) {
                graph.order.get(i).place = i;
            }
        });
        likely.cases().forEach(one -> ways.add(one.path().stream().flatMap(on -> own.order.stream()
                .filter(node -> node.step.name().text().equals(on.step())).limit(1).map(node -> new Taken(node, on.outcome()))).toList()));
        this.weights = likely.cases().stream().mapToDouble(one -> one.weight().doubleValue()).toArray();
        this.front = rooms.front(nodes.keySet(), own.order.size(), likely);
        this.end = rooms.end(nodes.keySet(), likely);
    }

    private void add(Step step, StepRoom rooms) {
        Node node = new Node(step, nodes.size(), rooms);
        nodes.put(step, node);
        Optional<Routine> routine = procedure.scope().performedBy(step);
        if (routine.isPresent()) {
            node.routine = routines.computeIfAbsent(routine.get().name().text(), name -> {
                Graph graph = new Graph(routine.get(), graphs.size(), rooms.heading(routine.get()));
                graphs.add(graph);
                return graph;
            });
            node.sending = rooms.sending(step, false);
            node.sendingInside = rooms.sending(step, true);
            node.plain = isPlain(step);
            if (!routine.get().steps().isEmpty() && length(routine.get()) <= LONGEST_IN_PLACE) {
                node.site = sites.size();
                sites.add(node);
            }
        }
    }

    /** Whether a step that performs a routine has nothing to say of itself, so that its steps can stand for it. */
    static boolean isPlain(Step step) {
        return step.frame().notes().isEmpty() && step.frame().needs().isEmpty() && step.frame().sets().isEmpty() && step.frame().hazards().isEmpty()
                && step.frame().handles().isEmpty() && step.frame().tools().isEmpty() && step.frame().pictures().isEmpty() && step.frame().hint().isEmpty()
                && step.frame().precautions().equals(Precautions.NONE) && step.frame().waits().isEmpty() && step.frame().confirms().isEmpty() && step.frame().verifies().isEmpty()
                && step.outcomes().stream().allMatch(outcome -> outcome.proves().isEmpty());
    }

    /** How many steps a routine has with those that it performs; endless for one that comes to itself again, and for one that performs such a one. */
    private int length(Routine routine) {
        Integer known = lengths.putIfAbsent(routine, ENDLESS);
        if (known != null) {
            return known;
        }
        int length = 0;
        for (Step step : routine.steps()) {
            Optional<Routine> inner = procedure.scope().performedBy(step);
            length = Math.min(ENDLESS, length + inner.map(this::length).orElse(1));
        }
        lengths.put(routine, length);
        return length;
    }

    double weight(int index) {
        return weights[index];
    }

    /** In place is what is performed once. */
    State simplest() {
        boolean[] inPlace = new boolean[sites.size()];
        int[] uses = new int[graphs.size()];
        sites.forEach(site -> uses[site.routine.index]++);
        sites.forEach(site -> inPlace[site.site] = uses[site.routine.index] == 1);
        int[] after = new int[graphs.size()];
        Arrays.fill(after, graphs.get(0).order.size());
        int[] first = new int[paths.size()];
        Arrays.setAll(first, i -> i);
        return new State(first, graphs.get(0).order, inPlace, after);
    }

    /** With one thing changed by chance; the same state where the chance changes nothing. */
    State changed(State state, Random random) {
        int kind = random.nextInt(10);
        if (kind < 5 && !sites.isEmpty()) {
            boolean[] inPlace = state.inPlace.clone();
            int site = random.nextInt(sites.size());
            boolean here = !inPlace[site];
            inPlace[site] = here;
            if (kind == 0) {
                // a routine that is printed apart pays only when hardly any step has it in its box
                sites.stream().filter(other -> other.routine == sites.get(site).routine).forEach(other -> inPlace[other.site] = here);
            }
            return new State(state.paths, state.order, inPlace, state.after);
        }
        if (kind < 9 && graphs.size() > 1) {
            int[] after = state.after.clone();
            after[1 + random.nextInt(graphs.size() - 1)] = random.nextInt(state.order.size() + 1);
            return new State(state.paths, state.order, state.inPlace, after);
        }
        if (state.paths.length > 2) {
            int[] changed = state.paths.clone();
            int one = 1 + random.nextInt(changed.length - 1);
            int other = 1 + random.nextInt(changed.length - 1);
            int kept = changed[one];
            changed[one] = changed[other];
            changed[other] = kept;
            List<Step> order = WorkingOrder.of(procedure, Arrays.stream(changed).mapToObj(paths::get).toList());
            return new State(changed, order.stream().map(nodes::get).toList(), state.inPlace, state.after);
        }
        return state;
    }

    Arrangement arrangement(State state) {
        Set<Step> inPlace = Collections.newSetFromMap(new IdentityHashMap<>());
        sites.stream().filter(site -> state.inPlace[site.site]).forEach(site -> inPlace.add(site.step));
        Map<String, Step> after = new LinkedHashMap<>();
        routines.forEach((name, graph) -> {
            if (state.after[graph.index] < state.order.size()) {
                after.put(name, state.order.get(state.after[graph.index]).step);
            }
        });
        Setting set = new Setting(state, USUAL);
        set.pages();
        return new Arrangement(state.order.stream().map(node -> node.step).toList(), inPlace, after, set.begin);
    }

    /** What an arrangement was made from, but for the order in which the ways were followed. */
    State state(Arrangement arrangement) {
        boolean[] inPlace = new boolean[sites.size()];
        sites.forEach(site -> inPlace[site.site] = arrangement.inPlace().contains(site.step));
        List<Node> order = arrangement.order().stream().map(nodes::get).toList();
        int[] after = new int[graphs.size()];
        Arrays.fill(after, order.size());
        routines.forEach((name, graph) -> after[graph.index] = Optional.ofNullable(arrangement.after().get(name)).map(nodes::get)
                .map(order::indexOf).orElse(order.size()));
        return new State(simplest().paths, order, inPlace, after);
    }

    Pages pages(State state, double longer) {
        return new Setting(state, longer).pages();
    }

    /** One card being set. */
    private final class Setting {
        private final State state;
        private final double column;
        /** The steps that begin a page, where that leaves room enough on the page before to be sure of it. */
        private final Set<Step> begin = Collections.newSetFromMap(new IdentityHashMap<>());
        private double y;
        private int columns;

        /** A step where it stands: that of the procedure or of a routine apart, or one in the box of another. */
        private final class Box {
            int page;
            Box[] inside;
        }

        private final Box[] boxes = new Box[nodes.size()];

        Setting(State state, double longer) {
            this.state = state;
            this.column = COLUMN / longer;
        }

        Pages pages() {
            boolean[] met = new boolean[graphs.size()];
            List<Graph> apart = new ArrayList<>();
            state.order.forEach(node -> meet(node, false, met, apart));
            for (int i = 0; i < apart.size(); i++) {
                apart.get(i).order.forEach(node -> meet(node, false, met, apart));
            }
            run(HEAD * COLUMNS + front);
            for (int i = 0; i < state.order.size(); i++) {
                boxes[state.order.get(i).number] = outer(state.order.get(i), i == 0 ? HEADING : 0);
                sections(apart, i);
            }
            sections(apart, state.order.size());
            whole(end[0], null);
            whole(end[1], null);
            run(end[2]);
            int[] turns = new int[ways.size()];
            for (int i = 0; i < turns.length; i++) {
                turns[i] = turns(ways.get(i));
            }
            return new Pages((columns + y / column) / COLUMNS, turns);
        }

        private boolean isInPlace(Node node, boolean inside) {
            return node.site >= 0 && state.inPlace[node.site] && (!inside || node.plain);
        }

        private void meet(Node node, boolean inside, boolean[] met, List<Graph> apart) {
            if (node.routine == null) {
                return;
            }
            if (isInPlace(node, inside)) {
                node.routine.order.forEach(inner -> meet(inner, true, met, apart));
            } else if (!met[node.routine.index]) {
                met[node.routine.index] = true;
                apart.add(node.routine);
            }
        }

        private void sections(List<Graph> apart, int position) {
            for (Graph graph : apart) {
                if (Math.min(state.after[graph.index], state.order.size()) == position) {
                    double heading = graph.heading;
                    for (Node node : graph.order) {
                        boxes[node.number] = outer(node, heading);
                        heading = 0;
                    }
                }
            }
        }

        /** What runs on over columns. */
        private void run(double length) {
            double left = length;
            while (y + left > column) {
                left -= column - y;
                columns++;
                y = 0;
            }
            y += left;
        }

        private int whole(double room, Step outer) {
            if (y > 0 && y + room > column) {
                if (columns % COLUMNS == COLUMNS - 1 && outer != null && column - y > SURE) {
                    begin.add(outer);
                }
                columns++;
                y = 0;
            }
            y += room;
            return columns / COLUMNS;
        }

        private Box outer(Node node, double heading) {
            Box box = new Box();
            if (isInPlace(node, false)) {
                box.inside = new Box[node.routine.order.size()];
                double[] head = { heading + node.room };
                box.page = -1;
                inner(node.routine, box.inside, head, box, node.step);
            } else {
                box.page = whole(heading + node.room + node.sending, node.step);
            }
            return box;
        }

        /** @param head what is kept with the next step, and then none */
        private void inner(Graph routine, Box[] into, double[] head, Box host, Step outer) {
            for (Node node : routine.order) {
                Box box = new Box();
                if (node.routine != null && isInPlace(node, true)) {
                    box.inside = new Box[node.routine.order.size()];
                    inner(node.routine, box.inside, head, host, outer);
                    box.page = -1;
                } else {
                    box.page = whole(head[0] + node.roomInside + node.sendingInside, head[0] > 0 ? outer : null);
                    head[0] = 0;
                    host.page = host.page < 0 ? box.page : host.page;
                }
                into[node.place] = box;
            }
        }

        private int page;
        private int turned;

        private int turns(List<Taken> way) {
            page = -1;
            turned = 0;
            way.forEach(taken -> read(taken, boxes[taken.node.number], 0));
            return turned;
        }

        private void look(int at) {
            if (at >= 0 && at != page) {
                turned += page >= 0 ? 1 : 0;
                page = at;
            }
        }

        private void read(Taken taken, Box box, int depth) {
            if (box == null || depth > DEEPEST) {
                return;
            }
            look(box.page);
            if (taken.node.routine == null) {
                return;
            }
            List<Taken> way = way(taken.node.routine, taken.outcome);
            if (box.inside != null) {
                way.forEach(inner -> read(inner, box.inside[inner.node.place], depth + 1));
            } else {
                way.forEach(inner -> read(inner, boxes[inner.node.number], depth + 1));
                look(box.page);
            }
        }
    }

    /** The shortest way through a routine to one of its exits. */
    private List<Taken> way(Graph routine, String exit) {
        return routine.ways.computeIfAbsent(exit, name -> RoutineWay.shortest(routine.graph, name).stream()
                .map(on -> new Taken(nodes.get(on.step()), on.by().key())).toList());
    }
}

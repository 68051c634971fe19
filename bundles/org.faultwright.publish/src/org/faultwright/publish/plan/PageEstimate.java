/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A card of A4 as it would be set, reckoned with the rooms of its steps: on which page each stands, and how often a repair turns the page. */
final class PageEstimate {
    /** In millimetres. */
    private static final double COLUMN = 273;
    /** What is free below a step, and below one in the box of another. */
    private static final double BELOW = 1.2;
    private static final double BELOW_INSIDE = 0.5;
    private static final int COLUMNS = 2;
    private static final int LONGEST_IN_PLACE = 14;
    /** Of the first page, what may stay free before steps that begin on the next one. */
    private static final double MOST_FREE = 65;
    private static final int ENDLESS = 10_000;
    private static final int DEEPEST = 8;
    private static final int LONGEST_READ = 10_000;

    /** One step of the procedure or a routine. */
    private static final class Node {
        final Step step;
        final double room;
        final double roomInside;
        final double roomInsideTwice;
        final boolean twice;
        double sending;
        double sendingInside;
        Graph routine;
        boolean plain;
        int site = -1;
        /** Among all steps, and in the order of its own graph. */
        final int number;
        int place;
        /** How many steps of its routine are kept with its warning, where that is printed in its box. */
        int beside;

        Node(Step step, int number, StepRoom rooms) {
            this.step = step;
            this.number = number;
            this.room = rooms.of(step, false);
            this.roomInside = rooms.of(step, true);
            this.roomInsideTwice = rooms.insideTwice(step);
            this.twice = rooms.isTwice(step);
        }
    }

    private static final class Taken {
        final Node node;
        final String outcome;
        /** Through the routine that the step performs; known once it was asked for. */
        Taken[] way;

        Taken(Node node, String outcome) {
            this.node = node;
            this.outcome = outcome;
        }
    }

    private static final class Graph {
        final StepGraph graph;
        final int index;
        final double heading;
        /** Whether its steps prove something, such as that nothing is charged: nobody should turn a page over them. */
        final boolean proves;
        Node[] order = {};
        final Map<String, Taken[]> ways = new HashMap<>();

        Graph(StepGraph graph, int index, double heading) {
            this.graph = graph;
            this.index = index;
            this.heading = heading;
            this.proves = index > 0 && graph.steps().stream().flatMap(step -> step.outcomes().stream()).anyMatch(outcome -> !outcome.proves().isEmpty());
        }
    }

    /**
     * @param paths   in which order the ways to the faults are followed for the order of the steps
     * @param inPlace by the number of the performing step
     * @param after   by the number of the routine, the place of a step in the order; the last but for those
     * @param fresh   whether the steps begin on a page of their own
     */
    record State(int[] paths, List<Node> order, boolean[] inPlace, int[] after, boolean fresh) {
        State with(boolean begun) {
            return new State(paths, order, inPlace, after, begun);
        }
    }

    /** @param length in pages, the last one as far as it is filled @param turns of each case @param parted how many times the steps that prove something go on over a page */
    record Pages(double length, int[] turns, int parted) {
    }

    private final Procedure procedure;
    private final List<List<Step>> paths;
    private final double[] weights;
    private final List<Graph> graphs = new ArrayList<>();
    private final Map<String, Graph> routines = new LinkedHashMap<>();
    private final Map<Step, Node> nodes = new IdentityHashMap<>();
    private final Map<Routine, Integer> lengths = new IdentityHashMap<>();
    private final List<Node> sites = new ArrayList<>();
    private final List<Taken[]> ways = new ArrayList<>();
    private final double head;
    private final double[] front;
    private final double[] end;

    PageEstimate(Procedure procedure, LikelyFaults likely) {
        this.procedure = procedure;
        this.paths = likely.paths();
        StepRoom rooms = new StepRoom(procedure);
        Graph own = new Graph(procedure, 0, rooms.beginning());
        graphs.add(own);
        for (int i = 0; i < graphs.size(); i++) {
            for (Step step : graphs.get(i).graph.steps()) {
                add(step, rooms);
            }
        }
        graphs.forEach(graph -> graph.order = WorkingOrder.of(graph.graph, graph == own ? paths : List.of()).stream().map(nodes::get).toArray(Node[]::new));
        nodes.values().stream().filter(node -> node.routine != null).forEach(node -> node.beside = PerformedRoutines.besideWarning(node.step,
                Arrays.stream(node.routine.order).map(inner -> inner.step).toList(), procedure.scope()));
        graphs.forEach(graph -> {
            for (int i = 0; i < graph.order.length; i++) {
                graph.order[i].place = i;
            }
        });
        Map<String, Node> named = new HashMap<>();
        Arrays.stream(own.order).forEach(node -> named.putIfAbsent(node.step.name().text(), node));
        likely.cases().forEach(one -> ways.add(one.path().stream().filter(on -> named.containsKey(on.step()))
                .map(on -> new Taken(named.get(on.step()), on.outcome())).toArray(Taken[]::new)));
        this.weights = likely.cases().stream().mapToDouble(one -> one.weight().doubleValue()).toArray();
        this.head = rooms.head();
        // not the keys of the map, whose order is another one on every machine
        List<Step> steps = graphs.stream().flatMap(graph -> graph.graph.steps().stream()).toList();
        this.front = rooms.front(steps, (int) Arrays.stream(own.order).filter(node -> !(node.step instanceof Step.Conclude)).count(), likely);
        this.end = rooms.end(steps, likely);
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

    boolean performsRoutines() {
        return !routines.isEmpty();
    }

    int repairs() {
        return weights.length;
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
        Arrays.fill(after, graphs.get(0).order.length);
        int[] first = new int[paths.size()];
        Arrays.setAll(first, i -> i);
        return new State(first, List.of(graphs.get(0).order), inPlace, after, false);
    }

    /** Whether what is read first fills the first page so well that the steps may begin on the next one. */
    boolean mayBeginFresh() {
        Columns columns = new Columns(1);
        return columns.columns == COLUMNS - 1 && columns.height() - columns.y <= MOST_FREE;
    }

    /** Every state with one routine put into a step or out of it, or one put elsewhere. */
    Stream<State> neighbours(State state) {
        Stream<State> inPlace = sites.stream().map(site -> {
            boolean[] changed = state.inPlace.clone();
            changed[site.site] = !changed[site.site];
            return new State(state.paths, state.order, changed, state.after, state.fresh);
        });
        Stream<State> begun = state.fresh || mayBeginFresh() ? Stream.of(state.with(!state.fresh)) : Stream.empty();
        Stream<State> elsewhere = IntStream.range(1, graphs.size()).boxed().flatMap(graph -> IntStream.rangeClosed(0, state.order.size())
                .filter(place -> place != state.after[graph]).mapToObj(place -> {
                    int[] after = state.after.clone();
                    after[graph] = place;
                    return new State(state.paths, state.order, state.inPlace, after, state.fresh);
                }));
        return Stream.concat(begun, Stream.concat(inPlace, elsewhere));
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
            return new State(state.paths, state.order, inPlace, state.after, state.fresh);
        }
        if (kind < 9 && graphs.size() > 1) {
            int[] after = state.after.clone();
            after[1 + random.nextInt(graphs.size() - 1)] = random.nextInt(state.order.size() + 1);
            return new State(state.paths, state.order, state.inPlace, after, state.fresh);
        }
        if (state.paths.length > 2) {
            int[] changed = state.paths.clone();
            int one = 1 + random.nextInt(changed.length - 1);
            int other = 1 + random.nextInt(changed.length - 1);
            int kept = changed[one];
            changed[one] = changed[other];
            changed[other] = kept;
            List<Step> order = WorkingOrder.of(procedure, Arrays.stream(changed).mapToObj(paths::get).toList());
            return new State(changed, order.stream().map(nodes::get).toList(), state.inPlace, state.after, state.fresh);
        }
        return state;
    }

    StepArrangement arrangement(State state) {
        Set<Step> inPlace = Collections.newSetFromMap(new IdentityHashMap<>());
        sites.stream().filter(site -> state.inPlace[site.site]).forEach(site -> inPlace.add(site.step));
        Map<String, Step> after = new LinkedHashMap<>();
        routines.forEach((name, graph) -> {
            if (state.after[graph.index] < state.order.size()) {
                after.put(name, state.order.get(state.after[graph.index]).step);
            }
        });
        return new StepArrangement(state.order.stream().map(node -> node.step).toList(), inPlace, after, state.fresh);
    }

    /** What an arrangement was made from, but for the order in which the ways were followed. */
    State state(StepArrangement arrangement) {
        boolean[] inPlace = new boolean[sites.size()];
        sites.forEach(site -> inPlace[site.site] = arrangement.inPlace().contains(site.step));
        List<Node> order = arrangement.order().stream().map(nodes::get).toList();
        int[] after = new int[graphs.size()];
        Arrays.fill(after, order.size());
        routines.forEach((name, graph) -> after[graph.index] = Optional.ofNullable(arrangement.after().get(name)).map(nodes::get)
                .map(order::indexOf).orElse(order.size()));
        return new State(simplest().paths, order, inPlace, after, arrangement.fresh());
    }

    Setting set(State state) {
        return new Setting(state);
    }

    Pages pages(State state, double longer) {
        return new Setting(state).pages(longer);
    }

    /**
     * What is printed one below the other, each a block that stays whole, and in which order each repair reads the blocks. It is made
     * once for a state; how the blocks fall on pages is then reckoned for any length of theirs.
     */
    final class Setting {
        private final State state;
        private double[] rooms = new double[4 * nodes.size()];
        private int count;
        private final int[][] read = new int[ways.size()][];
        private final int[] detours = new int[ways.size()];
        private int away;
        private int[] reading = new int[64];
        private int length;
        /** The first and the last block of each place where something is proved. */
        private final List<int[]> proofs = new ArrayList<>();

        /** A step where it stands: that of the procedure or of a routine apart, or one in the box of another. */
        private final class Box {
            int block = -1;
            Box[] inside;
        }

        private final Box[] boxes = new Box[nodes.size()];

        Setting(State state) {
            this.state = state;
            boolean[] met = new boolean[graphs.size()];
            List<Graph> apart = new ArrayList<>();
            state.order.forEach(node -> meet(node, false, met, apart));
            for (int i = 0; i < apart.size(); i++) {
                for (Node node : apart.get(i).order) {
                    meet(node, false, met, apart);
                }
            }
            for (int i = 0; i < state.order.size(); i++) {
                boxes[state.order.get(i).number] = outer(state.order.get(i), i == 0 ? graphs.get(0).heading : 0);
                sections(apart, i);
            }
            sections(apart, state.order.size());
            for (int i = 0; i < read.length; i++) {
                length = 0;
                away = 0;
                for (Taken taken : ways.get(i)) {
                    read(taken, boxes[taken.node.number], 0, 0);
                }
                read[i] = Arrays.copyOf(reading, length);
                detours[i] = away;
            }
        }

        private boolean isInPlace(Node node, boolean inside) {
            return node.site >= 0 && state.inPlace[node.site] && (!inside || node.plain);
        }

        private void meet(Node node, boolean inside, boolean[] met, List<Graph> apart) {
            if (node.routine == null) {
                return;
            }
            if (isInPlace(node, inside)) {
                for (Node inner : node.routine.order) {
                    meet(inner, true, met, apart);
                }
            } else if (!met[node.routine.index]) {
                met[node.routine.index] = true;
                apart.add(node.routine);
            }
        }

        private void sections(List<Graph> apart, int position) {
            for (Graph graph : apart) {
                if (Math.min(state.after[graph.index], state.order.size()) == position) {
                    double heading = graph.heading;
                    int first = count;
                    for (Node node : graph.order) {
                        boxes[node.number] = outer(node, heading);
                        heading = 0;
                    }
                    proved(graph, first);
                }
            }
        }

        private void proved(Graph routine, int first) {
            if (routine.proves) {
                proofs.add(new int[] { first, count - 1 });
            }
        }

        private int block(double room) {
            if (count == rooms.length) {
                rooms = Arrays.copyOf(rooms, 2 * count);
            }
            rooms[count] = room;
            return count++;
        }

        private Box outer(Node node, double heading) {
            Box box = new Box();
            if (isInPlace(node, false)) {
                box.inside = new Box[node.routine.order.length];
                double[] head = { heading + node.room + BELOW };
                inner(node.routine, box.inside, head, box, node.twice, node.beside);
            } else {
                box.block = block(heading + node.room + node.sending + BELOW);
            }
            return box;
        }

        /** @param head what is kept with the next step, and then none @param beside how many steps are kept with what warns in the box, as one block */
        private void inner(Graph routine, Box[] into, double[] head, Box host, boolean twice, int beside) {
            int first = count;
            for (Node node : routine.order) {
                Box box = new Box();
                if (node.routine != null && isInPlace(node, true)) {
                    box.inside = new Box[node.routine.order.length];
                    inner(node.routine, box.inside, head, host, twice, 0);
                } else {
                    double room = head[0] + (twice ? node.roomInsideTwice : node.roomInside) + node.sendingInside + BELOW_INSIDE;
                    boolean goesOn = node.place + 1 < beside;
                    box.block = goesOn ? count : block(room);
                    head[0] = goesOn ? room : 0;
                    host.block = host.block < 0 ? box.block : host.block;
                }
                into[node.place] = box;
            }
            proved(routine, first);
        }

        private void look(int block) {
            if (block >= 0 && (length == 0 || reading[length - 1] != block)) {
                reading = length == reading.length ? Arrays.copyOf(reading, 2 * length) : reading;
                reading[length++] = block;
            }
        }

        /** @param left how many places the reader has left to come back to */
        private void read(Taken taken, Box box, int depth, int left) {
            if (box == null || depth > DEEPEST || length > LONGEST_READ) {
                return;
            }
            look(box.block);
            if (taken.node.routine == null) {
                return;
            }
            boolean apart = box.inside == null;
            away += apart ? 1 + left : 0;
            for (Taken inner : way(taken)) {
                read(inner, apart ? boxes[inner.node.number] : box.inside[inner.node.place], depth + 1, apart ? left + 1 : left);
            }
            if (apart) {
                look(box.block);
            }
        }

        /**
         * How often the repair sends its reader to a routine that stands elsewhere; out of a routine that was come to so, where two
         * places to come back to must be kept in mind, it counts twice, and so on.
         */
        int detours(int repair) {
            return detours[repair];
        }

        /** @param longer how much longer than reckoned the blocks are */
        Pages pages(double longer) {
            Columns columns = new Columns(longer);
            int[] page = new int[count];
            if (state.fresh) {
                columns.nextPage();
            }
            for (int i = 0; i < count; i++) {
                columns.whole(rooms[i]);
                page[i] = columns.page();
            }
            columns.whole(end[0]);
            columns.whole(end[1]);
            columns.run(end[2]);
            int[] turns = new int[read.length];
            for (int i = 0; i < turns.length; i++) {
                for (int j = 1; j < read[i].length; j++) {
                    turns[i] += page[read[i][j]] != page[read[i][j - 1]] ? 1 : 0;
                }
            }
            int parted = 0;
            for (int[] proof : proofs) {
                parted += page[proof[0]] != page[proof[1]] ? 1 : 0;
            }
            return new Pages(columns.pages(), turns, parted);
        }
    }

    /** What is set into columns, from the front on. */
    private final class Columns {
        private final double column;
        private double y;
        private int columns;

        Columns(double longer) {
            this.column = COLUMN / longer;
            for (int i = 0; i < front.length - 1; i++) {
                whole(front[i]);
            }
            run(front[front.length - 1]);
        }

        /** The head of the first page stands above all its columns. */
        private double height() {
            return columns < COLUMNS ? column - head : column;
        }

        /** What runs on over columns. */
        void run(double length) {
            double rest = length;
            while (y + rest > height()) {
                rest -= height() - y;
                columns++;
                y = 0;
            }
            y += rest;
        }

        void whole(double room) {
            if (y > 0 && y + room > height()) {
                columns++;
                y = 0;
            }
            y += room;
        }

        void nextPage() {
            if (columns > 0 || y > 0) {
                columns = (page() + 1) * COLUMNS;
                y = 0;
            }
        }

        int page() {
            return columns / COLUMNS;
        }

        double pages() {
            return (columns + y / height()) / COLUMNS;
        }
    }

    /** The shortest way through a routine to one of its exits. */
    private Taken[] way(Taken taken) {
        if (taken.way == null) {
            Graph routine = taken.node.routine;
            Taken[] known = routine.ways.get(taken.outcome);
            if (known == null) {
                known = RoutineWay.shortest(routine.graph, taken.outcome).stream().map(on -> new Taken(nodes.get(on.step()), on.by().key()))
                        .toArray(Taken[]::new);
                routine.ways.put(taken.outcome, known);
            }
            taken.way = known;
        }
        return taken.way;
    }
}

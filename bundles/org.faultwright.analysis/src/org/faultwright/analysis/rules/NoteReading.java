/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Dominators;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.SafetyNeed;
import org.faultwright.analysis.paths.SafetyNeeds;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** Which steps need to have been told of which hazards, and on which paths nobody was told before. */
final class NoteReading {
    private final ProcedurePaths paths;
    private final Map<Hazard, Set<InlinedStep>> readAt = new LinkedHashMap<>();
    private final Map<Hazard, List<Untold>> untold = new TreeMap<>();

    /**
     * A need that some path comes to without a note about it in force, and without any such need before.
     *
     * @param lapsed where a note about it was read on that path, before what it is about began anew
     */
    record Untold(InlinedStep place, SafetyNeed need, List<PathStep> path, Optional<InlinedStep> lapsed) {
    }

    private NoteReading(ProcedurePaths paths) {
        this.paths = paths;
        List<InlinedStep> places = paths.map().places().stream().filter(paths::reaches).toList();
        places.forEach(place -> notes(place).forEach(hazard ->
                readAt.computeIfAbsent(hazard, h -> new HashSet<>()).add(place)));
        Map<Hazard, Map<BenchStates.State, SafetyNeed>> needed = needed();
        needed.forEach((hazard, needs) -> {
            List<Untold> first = untold(hazard, needs);
            if (!first.isEmpty()) {
                untold.put(hazard, first);
            }
        });
    }

    /** The hazards that a note read at the place covers. */
    private Stream<Hazard> notes(InlinedStep place) {
        return place.notes().stream().flatMap(name -> paths.map().scope().note(name).stream())
                .flatMap(note -> note.covers().stream()).map(Written::value);
    }

    private Map<Hazard, Map<BenchStates.State, SafetyNeed>> needed() {
        SafetyNeeds needs = new SafetyNeeds(paths);
        Map<Hazard, Map<BenchStates.State, SafetyNeed>> needed = new TreeMap<>();
        paths.bench().all().forEach(state -> needs.at(state).forEach(need ->
                needed.computeIfAbsent(need.hazard(), h -> new HashMap<>()).put(state, need)));
        return needed;
    }

    /** A state of the bench, and whether a note about the hazard is in force on coming there. */
    private record Node(BenchStates.State state, boolean told) {
    }

    /** Breadth first over states and notes in force. A step behind one that must be told anyway is told with it. */
    private List<Untold> untold(Hazard hazard, Map<BenchStates.State, SafetyNeed> needs) {
        List<Untold> found = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Map<Node, Optional<Node>> cameFrom = new HashMap<>();
        Deque<Node> waiting = new ArrayDeque<>();
        paths.bench().all().findFirst().map(first -> new Node(first, false)).ifPresent(first -> {
            cameFrom.put(first, Optional.empty());
            waiting.add(first);
        });
        while (!waiting.isEmpty()) {
            Node node = waiting.remove();
            InlinedStep place = node.state().place();
            boolean told = node.told() || places(hazard).contains(place);
            Optional<SafetyNeed> need = Optional.ofNullable(needs.get(node.state()));
            if (need.isPresent() && (!told || need.get().atStep() && !place.isToldOf(hazard, paths.map().scope()))) {
                told = true;
                if (seen.add(place.outermost().label())) {
                    found.add(untold(node, hazard, need.get(), cameFrom));
                }
            }
            for (BenchStates.State next : node.state().next()) {
                Node on = new Node(next, told && !lapses(hazard, node.state(), next));
                if (!cameFrom.containsKey(on)) {
                    cameFrom.put(on, Optional.of(node));
                    waiting.add(on);
                }
            }
        }
        return found;
    }

    /** A note counts as long as its reason: what becomes live or charged after it was read is news, unless the step itself told of it. */
    private boolean lapses(Hazard hazard, BenchStates.State state, BenchStates.State next) {
        boolean anew = hazard == Hazard.SHOCK && (state.raisesVoltage(next) || state.raisesCharge(next))
                || hazard == Hazard.STORED_CHARGE && state.raisesCharge(next);
        return anew && !state.place().isToldOf(hazard, paths.map().scope());
    }

    private Untold untold(Node node, Hazard hazard, SafetyNeed need, Map<Node, Optional<Node>> cameFrom) {
        List<BenchStates.State> way = new ArrayList<>();
        for (Optional<Node> at = Optional.of(node); at.isPresent(); at = cameFrom.get(at.get())) {
            way.add(0, at.get().state());
        }
        Optional<InlinedStep> lapsed = way.stream().map(BenchStates.State::place).filter(places(hazard)::contains)
                .reduce((earlier, later) -> later);
        return new Untold(node.state().place(), need, paths.bench().path(way), lapsed);
    }

    static Optional<NoteReading> of(Subject subject) {
        return ProcedurePaths.of(subject)
                .map(paths -> subject.shared(NoteReading.class, any -> new NoteReading(paths)));
    }

    private Set<InlinedStep> places(Hazard hazard) {
        return readAt.getOrDefault(hazard, Set.of());
    }

    /** Whether any step that can be come to reads a note about the hazard. */
    boolean isReadAnywhere(Hazard hazard) {
        return !places(hazard).isEmpty();
    }

    Map<Hazard, List<Untold>> untold() {
        return untold;
    }

    /** The notes that can be named here and cover the hazard. */
    List<Note> notes(Hazard hazard) {
        return paths.map().scope().notes().stream()
                .filter(note -> note.covers().stream().anyMatch(covered -> covered.value() == hazard))
                // a note about people first where people are hurt
                .sorted((a, b) -> Boolean.compare(a.word().isAboutPeople() != hazard.hurtsPeople(),
                        b.word().isAboutPeople() != hazard.hurtsPeople())).toList();
    }

    /** Reading a note at the step itself, and at the step that every path to all that need it passes. */
    Fix[] fixes(Untold one) {
        List<Fix> fixes = new ArrayList<>();
        notes(one.need().hazard()).stream().findFirst().map(note -> note.name().text()).ifPresent(note -> {
            Step step = one.place().outermost().step();
            fixes.add(FrameLine.warning("Read " + note + " at " + step.name(), step, note));
            before(untold.get(one.need().hazard())).filter(gate -> gate.step() != step && !one.need().atStep()).ifPresent(gate -> fixes.add(
                    FrameLine.warning("Read " + note + " at " + gate.label() + ", before every step that needs it",
                            gate.step(), note)));
        });
        return fixes.toArray(Fix[]::new);
    }

    private Optional<InlinedStep> before(List<Untold> all) {
        Dominators dominators = paths.map().dominators();
        int common = all.stream().mapToInt(one -> one.place().outermost().index()).reduce(dominators::common).orElseThrow();
        InlinedStep gate = paths.map().places().get(common).outermost();
        return gate.isStep() ? Optional.of(gate) : paths.map().place(gate.step().name());
    }
}

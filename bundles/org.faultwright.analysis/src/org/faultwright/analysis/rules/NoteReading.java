/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Dominators;
import org.faultwright.analysis.paths.Place;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.analysis.paths.SafetyNeed;
import org.faultwright.analysis.paths.SafetyNeeds;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Step;

/** Which steps need to have been told of which hazards, and on which paths nobody was told before. */
final class NoteReading {
    private final ProcedurePaths paths;
    private final Map<Hazard, Set<Place>> readAt = new LinkedHashMap<>();
    private final Map<Hazard, List<Untold>> untold = new TreeMap<>();

    /** A need that some path comes to without a note about it having been read, and without any such need before. */
    record Untold(Place place, SafetyNeed need, List<PathStep> path) {
    }

    private NoteReading(ProcedurePaths paths) {
        this.paths = paths;
        List<Place> places = paths.map().places().stream().filter(paths::reaches).toList();
        places.forEach(place -> place.notes().stream().flatMap(name -> paths.map().scope().note(name).stream())
                .flatMap(note -> note.covers().stream())
                .forEach(covered -> readAt.computeIfAbsent(covered.value(), h -> new HashSet<>()).add(place)));
        Map<Hazard, Map<Place, SafetyNeed>> needed = needed(places);
        needed.forEach((hazard, needs) -> {
            // a step behind one that must be told anyway is told with it
            Routes.Reach reach = paths.routes().upTo(needs::containsKey, places(hazard)::contains);
            Set<String> seen = new HashSet<>();
            List<Untold> first = needs.keySet().stream().filter(reach::has)
                    .filter(place -> seen.add(place.outermost().label()))
                    .map(place -> new Untold(place, needs.get(place), reach.path(place).orElseThrow())).toList();
            if (!first.isEmpty()) {
                untold.put(hazard, first);
            }
        });
    }

    private Map<Hazard, Map<Place, SafetyNeed>> needed(List<Place> places) {
        SafetyNeeds needs = new SafetyNeeds(paths);
        Map<Hazard, Map<Place, SafetyNeed>> needed = new TreeMap<>();
        places.forEach(place -> needs.at(place).forEach(need ->
                needed.computeIfAbsent(need.hazard(), h -> new LinkedHashMap<>()).put(place, need)));
        return needed;
    }

    static Optional<NoteReading> of(Subject subject) {
        return ProcedurePaths.of(subject)
                .map(paths -> subject.shared(NoteReading.class, any -> new NoteReading(paths)));
    }

    private Set<Place> places(Hazard hazard) {
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
            before(untold.get(one.need().hazard())).filter(gate -> gate.step() != step).ifPresent(gate -> fixes.add(
                    FrameLine.warning("Read " + note + " at " + gate.label() + ", before every step that needs it",
                            gate.step(), note)));
        });
        return fixes.toArray(Fix[]::new);
    }

    private Optional<Place> before(List<Untold> all) {
        Dominators dominators = paths.map().dominators();
        int common = all.stream().mapToInt(one -> one.place().outermost().index()).reduce(dominators::common).orElseThrow();
        Place gate = paths.map().places().get(common).outermost();
        return gate.isStep() ? Optional.of(gate) : paths.map().place(gate.step().name());
    }
}

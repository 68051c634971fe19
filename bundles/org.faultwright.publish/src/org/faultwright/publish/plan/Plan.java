/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.Publication;

/** What a card is laid out by: the working order, the number of every step, and which routine is printed where. */
public final class Plan {
    /** A routine of so many steps is printed wherever it is performed; one that is performed once may be longer. */
    private static final int SHORT = 4;
    private static final int LONG_ONCE = 9;

    private final Publication publication;
    private final Scope scope;
    private final Likely likely;
    private final List<Section> sections = new ArrayList<>();
    private final Map<Step, Placed> first = new IdentityHashMap<>();
    private final Map<String, Routine> performed = new LinkedHashMap<>();
    private final Map<String, Integer> uses = new LinkedHashMap<>();
    private final Map<String, Section> apart = new LinkedHashMap<>();
    private final Map<String, List<Placed>> callers = new LinkedHashMap<>();
    private final Map<Placed, List<Placed>> inside = new IdentityHashMap<>();

    public Plan(Publication publication) {
        this.publication = publication;
        this.scope = publication.procedure().scope();
        this.likely = Likely.of(publication.procedure());
        count();
        add("", publication.procedure());
        // Routines found on the way are appended, and their own performs looked through in turn.
        List<String> letters = new ArrayList<>();
        for (int i = 0; i < sections.size(); i++) {
            for (Placed step : List.copyOf(sections.get(i).steps())) {
                Stream.concat(Stream.of(step), inside(step).stream()).forEach(one -> apart(one, letters));
            }
        }
    }

    /** Every routine that can be come to, with the number of steps that perform it. */
    private void count() {
        List<Step> steps = new ArrayList<>(publication.procedure().steps());
        for (int i = 0; i < steps.size(); i++) {
            routine(steps.get(i)).ifPresent(routine -> {
                String name = routine.name().text();
                uses.merge(name, 1, Integer::sum);
                if (performed.putIfAbsent(name, routine) == null) {
                    steps.addAll(routine.steps());
                }
            });
        }
    }

    private Optional<Routine> routine(Step step) {
        return step instanceof Step.Perform perform ? perform.routine().flatMap(scope::routine) : Optional.empty();
    }

    private void add(String letter, StepGraph graph) {
        Run run = new Run(graph, Optional.empty());
        List<Placed> steps = new ArrayList<>();
        for (Step step : WorkingOrder.of(graph, letter.isEmpty() ? likely.paths() : List.of())) {
            Placed placed = new Placed(letter + (steps.size() + 1), step, run);
            run.place(step, placed);
            first.putIfAbsent(step, placed);
            steps.add(placed);
        }
        sections.add(new Section(letter, graph, List.copyOf(steps)));
        for (Placed step : steps) {
            List<Placed> within = new ArrayList<>();
            routine(step.step()).filter(this::isInPlace).ifPresent(routine -> unfold(step, step.label(), routine, within));
            if (!within.isEmpty()) {
                inside.put(step, List.copyOf(within));
            }
        }
    }

    /** The steps of a routine in place have the letters a, b, c; a routine that it performs in turn goes on with them. */
    private void unfold(Placed caller, String number, Routine routine, List<Placed> into) {
        Run run = new Run(routine, Optional.of(caller));
        for (Step step : WorkingOrder.of(routine, List.of())) {
            Optional<Routine> within = routine(step).filter(this::isInPlace);
            if (within.isPresent()) {
                int begins = into.size();
                unfold(new Placed(caller.label(), step, run), number, within.get(), into);
                if (into.size() > begins) {
                    run.place(step, into.get(begins));
                    first.putIfAbsent(step, into.get(begins));
                }
            } else {
                Placed placed = new Placed(number + small(into.size()), step, run);
                run.place(step, placed);
                first.putIfAbsent(step, placed);
                into.add(placed);
            }
        }
    }

    private static String small(int index) {
        return WorkingOrder.letter(index).toLowerCase(Locale.ROOT);
    }

    private boolean isInPlace(Routine routine) {
        int length = length(routine, new LinkedHashSet<>());
        boolean once = uses.getOrDefault(routine.name().text(), 0) == 1;
        boolean reads = routine.steps().stream().anyMatch(step -> step instanceof Step.Measure || step instanceof Step.Calculate);
        // What closes the unit stands before many conclusions and is the same at each.
        boolean closing = !once && publication.procedure().closing().filter(routine::equals).isPresent();
        return length > 0 && !closing && (once ? length <= LONG_ONCE : length <= SHORT && !reads);
    }

    /** How many steps are printed for it; none for one that performs itself. */
    private int length(Routine routine, Set<String> above) {
        if (!above.add(routine.name().text())) {
            return Integer.MIN_VALUE / 2;
        }
        int length = 0;
        for (Step step : routine.steps()) {
            Optional<Routine> within = routine(step);
            int own = within.map(inner -> length(inner, above)).orElse(1);
            length += own < 0 ? own : within.filter(this::isShort).isPresent() ? own : 1;
        }
        above.remove(routine.name().text());
        return length;
    }

    private boolean isShort(Routine routine) {
        return routine.steps().size() <= SHORT;
    }

    private void apart(Placed step, List<String> letters) {
        Optional<Routine> routine = routine(step.step()).filter(one -> !isInPlace(one));
        if (routine.isPresent()) {
            String name = routine.get().name().text();
            callers.computeIfAbsent(name, none -> new ArrayList<>()).add(step);
            if (!apart.containsKey(name)) {
                letters.add(name);
                add(WorkingOrder.letter(letters.size() - 1), routine.get());
                apart.put(name, sections.get(sections.size() - 1));
            }
        }
    }

    public Publication publication() {
        return publication;
    }

    public Procedure procedure() {
        return publication.procedure();
    }

    public Scope scope() {
        return scope;
    }

    public Likely likely() {
        return likely;
    }

    /** The procedure itself first, then the routines printed apart in the order they are met. */
    public List<Section> sections() {
        return sections;
    }

    /** Every routine that can be come to, wherever it is printed. */
    public List<Routine> routines() {
        return List.copyOf(performed.values());
    }

    /** The steps of the procedure or a routine in the order they are printed. */
    public List<Step> order(StepGraph graph) {
        return WorkingOrder.of(graph, graph == publication.procedure() ? likely.paths() : List.of());
    }

    /** Everything that is printed, in its order; a step in place follows the one that performs it. */
    public Stream<Placed> placed() {
        return sections.stream().flatMap(section -> section.steps().stream())
                .flatMap(step -> Stream.concat(Stream.of(step), inside(step).stream()));
    }

    /** Every step once, where it is printed first. */
    public Stream<Step> steps() {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        return placed().map(Placed::step).filter(met::add);
    }

    /** The steps of a routine that is printed where this step performs it; empty where it is printed apart. */
    public List<Placed> inside(Placed step) {
        return inside.getOrDefault(step, List.of());
    }

    /** Whether one step of a routine in place is printed right after the other. */
    public boolean follows(Placed one, Placed next) {
        return inside.values().stream().anyMatch(steps -> steps.indexOf(one) >= 0 && steps.indexOf(one) + 1 == steps.indexOf(next));
    }

    /** The section of a routine that is printed apart. */
    public Optional<Section> routine(Name name) {
        return Optional.ofNullable(apart.get(name.text()));
    }

    /** The section of the routine that the step sends its reader to; absent where it does not, or the routine is printed in place. */
    public Optional<Section> section(Placed step) {
        return inside(step).isEmpty() ? routine(step.step()).flatMap(routine -> routine(routine.name())) : Optional.empty();
    }

    /** The places that lead to the section's routine. */
    public List<Placed> callers(Section section) {
        return callers.getOrDefault(section.graph().name().text(), List.of());
    }

    /** Such as {@code 7}, {@code A2} or {@code 7b}: where it is printed first. */
    public String label(Step step) {
        Placed placed = first.get(step);
        return placed == null ? "" : placed.label();
    }

    public String anchor(Step step) {
        return "step-" + label(step);
    }

    public static String anchor(Section section) {
        return "routine-" + section.letter();
    }

    /** Where each step stands, by its name: {@code SeeIt}, and in a routine {@code MakeSafe/SwitchOff}. */
    public Map<String, String> places() {
        Map<String, String> places = new TreeMap<>();
        places(places, "", publication.procedure().steps());
        performed.values().forEach(routine -> places(places, routine.name().text() + "/", routine.steps()));
        return places;
    }

    private void places(Map<String, String> into, String path, List<Step> steps) {
        steps.stream().filter(first::containsKey)
                .forEach(step -> into.putIfAbsent(path + step.name().text(), first.get(step).anchor()));
    }
}

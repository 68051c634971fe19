/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.Publication;

/** What a card is laid out by: the working order, the number of every step, and which routine is printed where. */
public final class CardPlan {
    private final Publication publication;
    private final Scope scope;
    private final LikelyFaults likely;
    private final StepArrangement arrangement;
    private final List<CardSection> sections = new ArrayList<>();
    private final Map<Step, PlacedStep> first = new IdentityHashMap<>();
    private final Map<String, Routine> performed;
    private final Map<String, CardSection> apart = new LinkedHashMap<>();
    private final Map<String, List<PlacedStep>> callers = new LinkedHashMap<>();
    private final Map<PlacedStep, List<PlacedStep>> inside = new IdentityHashMap<>();
    private final Map<Step, List<String>> labels = new IdentityHashMap<>();
    private final Map<CardSection, Integer> visits = new IdentityHashMap<>();

    /** With the best arrangement that can be reckoned; what is printed has that which {@code TypesetPlan} has tried. */
    public CardPlan(Publication publication) {
        this(publication, LikelyFaults.of(publication), Optional.empty());
    }

    /** One for each arrangement, the best first as far as that can be reckoned. */
    public static Iterator<CardPlan> candidates(Publication publication) {
        LikelyFaults likely = LikelyFaults.of(publication);
        Iterator<StepArrangement> arrangements = StepArrangement.candidates(publication.procedure(), likely);
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return arrangements.hasNext();
            }

            @Override
            public CardPlan next() {
                return new CardPlan(publication, likely, Optional.of(arrangements.next()));
            }
        };
    }

    /** Each step where it stood in an earlier state of the text; absent where that had other steps. */
    public static Optional<CardPlan> kept(CardPlan before, Publication now) {
        return before.arrangement.kept(before.procedure(), now.procedure()).map(kept -> new CardPlan(now, LikelyFaults.of(now), Optional.of(kept)));
    }

    /** Whether every step stands where it does in another plan of the same publication. */
    public boolean isLike(CardPlan other) {
        return arrangement.isLike(other.arrangement);
    }

    private CardPlan(Publication publication, LikelyFaults likely, Optional<StepArrangement> given) {
        this.publication = publication;
        this.scope = publication.procedure().scope();
        this.performed = PerformedRoutines.within(publication.procedure(), scope);
        this.likely = likely;
        this.arrangement = given.orElseGet(() -> StepArrangement.of(publication.procedure(), likely));
        add("", publication.procedure(), arrangement.order());
        List<Routine> routines = apart();
        for (int i = 0; i < routines.size(); i++) {
            add(WorkingOrder.letter(i), routines.get(i), WorkingOrder.of(routines.get(i), List.of()));
            apart.put(routines.get(i).name().text(), sections.get(i + 1));
        }
        placed().forEach(placed -> section(placed).ifPresent(section -> callers
                .computeIfAbsent(section.graph().name().text(), none -> new ArrayList<>()).add(placed)));
    }

    private void add(String letter, StepGraph graph, List<Step> order) {
        StepRun run = new StepRun(graph, Optional.empty());
        List<PlacedStep> steps = new ArrayList<>();
        for (Step step : order) {
            PlacedStep placed = new PlacedStep(letter + (steps.size() + 1), step, run);
            run.place(step, placed);
            first.putIfAbsent(step, placed);
            steps.add(placed);
        }
        sections.add(new CardSection(letter, graph, List.copyOf(steps)));
        for (PlacedStep step : steps) {
            List<PlacedStep> within = new ArrayList<>();
            inPlace(step.step(), false).ifPresent(routine -> unfold(step, step.label(), routine, within));
            if (!within.isEmpty()) {
                inside.put(step, List.copyOf(within));
            }
        }
    }

    /** The steps of a routine in place have the letters a, b, c; a routine that it performs in turn goes on with them. */
    private void unfold(PlacedStep caller, String number, Routine routine, List<PlacedStep> into) {
        StepRun run = new StepRun(routine, Optional.of(caller));
        for (Step step : WorkingOrder.of(routine, List.of())) {
            Optional<Routine> within = inPlace(step, true);
            if (within.isPresent()) {
                int begins = into.size();
                unfold(new PlacedStep(caller.label(), step, run), number, within.get(), into);
                if (into.size() > begins) {
                    run.place(step, into.get(begins));
                    first.putIfAbsent(step, into.get(begins));
                }
            } else {
                PlacedStep placed = new PlacedStep(number + small(into.size()), step, run);
                run.place(step, placed);
                first.putIfAbsent(step, placed);
                into.add(placed);
            }
        }
    }

    private static String small(int index) {
        return WorkingOrder.letter(index).toLowerCase(Locale.ROOT);
    }

    /** The routine that is printed in the box of the step. @param inner whether the step itself is in the box of another */
    private Optional<Routine> inPlace(Step step, boolean inner) {
        return arrangement.isInPlace(step, inner) ? scope.performedBy(step) : Optional.empty();
    }

    /** The routines that are printed for themselves, as they follow one another on the card. */
    private List<Routine> apart() {
        Map<String, Routine> met = new LinkedHashMap<>();
        List<Step> open = new ArrayList<>(arrangement.order());
        for (int i = 0; i < open.size(); i++) {
            apart(open.get(i), false, met, open);
        }
        List<Routine> routines = new ArrayList<>(met.values());
        routines.sort(Comparator.comparingInt(routine -> Optional.ofNullable(arrangement.after().get(routine.name().text()))
                .map(arrangement.order()::indexOf).orElse(Integer.MAX_VALUE)));
        return routines;
    }

    private void apart(Step step, boolean inner, Map<String, Routine> met, List<Step> open) {
        Optional<Routine> routine = scope.performedBy(step);
        if (inPlace(step, inner).isPresent()) {
            routine.get().steps().forEach(one -> apart(one, true, met, open));
        } else if (routine.isPresent() && met.putIfAbsent(routine.get().name().text(), routine.get()) == null) {
            open.addAll(routine.get().steps());
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

    public LikelyFaults likely() {
        return likely;
    }

    /** The procedure itself first, then the routines printed apart in the order they stand in. */
    public List<CardSection> sections() {
        return sections;
    }

    /** Every routine that can be come to, wherever it is printed. */
    public List<Routine> routines() {
        return List.copyOf(performed.values());
    }

    /** The steps of the procedure or a routine in the order they are printed. */
    public List<Step> order(StepGraph graph) {
        return graph == publication.procedure() ? arrangement.order() : WorkingOrder.of(graph, List.of());
    }

    /** The routines that stand after a step of the procedure, before the next one. */
    public List<CardSection> after(PlacedStep step) {
        return routines(section -> arrangement.after().get(section.graph().name().text()) == step.step());
    }

    /** Whether the steps begin on a page of their own, on the paper that a card is arranged for. */
    public boolean beginsOnFreshPage() {
        return arrangement.fresh();
    }

    /** The routines that stand after all steps of the procedure. */
    public List<CardSection> afterAll() {
        return routines(section -> !arrangement.after().containsKey(section.graph().name().text()));
    }

    private List<CardSection> routines(Predicate<CardSection> where) {
        return sections.stream().filter(CardSection::isRoutine).filter(where).toList();
    }

    /** Everything that is printed, in its order; a step in place follows the one that performs it. */
    public Stream<PlacedStep> placed() {
        return Stream.concat(sections.get(0).steps().stream().flatMap(step -> Stream.concat(Stream.of(step), after(step).stream()
                .flatMap(section -> section.steps().stream()))), afterAll().stream().flatMap(section -> section.steps().stream()))
                .flatMap(step -> Stream.concat(Stream.of(step), inside(step).stream()));
    }

    /** Every step once, where it is printed first. */
    public Stream<Step> steps() {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        return placed().map(PlacedStep::step).filter(met::add);
    }

    /** The steps of a routine that is printed where this step performs it; empty where it is printed apart. */
    public List<PlacedStep> inside(PlacedStep step) {
        return inside.getOrDefault(step, List.of());
    }

    /** How many of the steps that are printed in the box of a step stay with what warns there. */
    public int besideWarning(PlacedStep step) {
        return PerformedRoutines.besideWarning(step.step(), inside(step).stream().map(PlacedStep::step).toList(), scope);
    }

    /** The section of a routine that is printed apart. */
    public Optional<CardSection> routine(Name name) {
        return Optional.ofNullable(apart.get(name.text()));
    }

    /** The section of the routine that the step sends its reader to; absent where it does not, or the routine is printed in place. */
    public Optional<CardSection> section(PlacedStep step) {
        return inside(step).isEmpty() ? scope.performedBy(step.step()).flatMap(routine -> routine(routine.name())) : Optional.empty();
    }

    /** The places that lead to the section's routine. */
    public List<PlacedStep> callers(CardSection section) {
        return callers.getOrDefault(section.graph().name().text(), List.of());
    }

    /** Where a step of the procedure stands, or one of a routine that is printed apart; absent where the routine is printed in boxes only. */
    public Optional<PlacedStep> placed(StepGraph graph, Step step) {
        return sections.stream().filter(section -> section.graph() == graph).flatMap(section -> section.steps().stream())
                .filter(placed -> placed.step() == step).findFirst();
    }

    /** How often somebody on one way may come to the routine, three times at most; once where it is the procedure itself. */
    public int visits(CardSection section) {
        return section.isRoutine() ? visits.computeIfAbsent(section, one -> RoutineVisits.of(publication.procedure(), (Routine) one.graph(), scope,
                step -> callers(one).stream().anyMatch(placed -> placed.step() == step))) : 1;
    }

    /** Such as {@code 7}, {@code A2} or {@code 7b}: where it is printed first. */
    public String label(Step step) {
        PlacedStep placed = first.get(step);
        return placed == null ? "" : placed.label();
    }

    /** Every place where the step is printed, such as {@code 7b} and {@code 12b}. */
    public List<String> labels(Step step) {
        return labels.computeIfAbsent(step, one -> placed().filter(placed -> placed.step() == one).map(PlacedStep::label).toList());
    }

    public static String anchor(CardSection section) {
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

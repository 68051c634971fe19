/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.walk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.paths.Position;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;

/**
 * A procedure walked one result after the other, as at the bench: where one stands, how the unit is set up, which notes are due,
 * what was read, and how long it took by the times that the steps state. A walk never changes; each move gives the next one. The
 * page that {@code publish} makes walks the tree by the same rules.
 */
public final class Walk {
    private final Procedure procedure;
    private final Position position;
    private final boolean lost;
    private final Map<String, String> setUp;
    private final Set<String> read;
    private final Map<String, Exact> readings;
    private final List<Suspects.Evidence> evidence;
    private final Exact seconds;
    private final List<Setting> unmet;

    private Walk(Procedure procedure, Position position, boolean lost, Map<String, String> left, Set<String> read,
            Map<String, Exact> readings, List<Suspects.Evidence> evidence, Exact seconds) {
        this.procedure = procedure;
        this.position = position;
        this.lost = lost;
        List<Setting> needs = lost ? List.of() : position.step().frame().needs();
        this.setUp = with(left, needs, procedure.scope());
        this.unmet = needs.stream().filter(need -> left.containsKey(need.condition().text())
                && !need.value().text().equals(left.get(need.condition().text()))).toList();
        this.read = read;
        this.readings = readings;
        this.evidence = evidence;
        this.seconds = seconds;
    }

    /** The beginning; absent for a text without a step to begin at. */
    public static Optional<Walk> start(Procedure procedure) {
        return Position.start(procedure, procedure.scope()).map(first -> new Walk(procedure, first, false,
                starting(procedure.scope()), Set.of(), Map.of(), List.of(), Exact.ZERO));
    }

    public Procedure procedure() {
        return procedure;
    }

    public Step step() {
        return position.step();
    }

    /** The steps that perform the routines around it, from the outside inward. */
    public List<Step> callers() {
        return position.path().subList(0, position.path().size() - 1);
    }

    /** Such as {@code MakeSafe/SwitchOff}. */
    public String label() {
        return position.label();
    }

    /** Whether a conclusion is reached, or an arrow led nowhere. */
    public boolean isEnd() {
        return lost || position.isEnd();
    }

    /** Whether an arrow led nowhere, as it may in a text with errors. */
    public boolean isLost() {
        return lost;
    }

    public boolean canEnter() {
        return !isEnd() && position.canEnter();
    }

    /** The value of each condition, the needs of the step met. */
    public Map<String, String> setUp() {
        return setUp;
    }

    /** The needs of the step that did not hold when it was come to: what must be set first. */
    public List<Setting> unmet() {
        return unmet;
    }

    /** How often a bounded result of the step was taken already. */
    public int taken(Outcome outcome) {
        return position.taken(outcome);
    }

    /** The notes to be read before the step is begun: named by it, and not read before or no longer in force. */
    public List<Note> due() {
        return notes(step()).filter(note -> !read.contains(note.name().text())).toList();
    }

    /** The notes read and still in force, without those of this step. */
    public Set<String> read() {
        return read;
    }

    /** The results so far of the procedure's own steps; a routine counts by its exit. */
    public List<Suspects.Evidence> evidence() {
        return evidence;
    }

    /** So far, by the times that the steps state. */
    public Exact seconds() {
        return seconds;
    }

    private Stream<Note> notes(Step step) {
        return step.frame().notes().stream().flatMap(name -> procedure.scope().note(name).stream()).distinct();
    }

    /** Into the routine. @throws IllegalStateException if there is none to enter */
    public Walk entered() {
        Position inside = position.entered();
        return new Walk(procedure, inside, false, setUp, readHere(), readings, evidence, seconds);
    }

    private Set<String> readHere() {
        Set<String> all = new LinkedHashSet<>(read);
        notes(step()).forEach(note -> all.add(note.name().text()));
        return all;
    }

    /** By a result without a number. @throws IllegalArgumentException if the step has no such outcome */
    public Walk take(Outcome outcome) {
        return take(outcome, Optional.empty());
    }

    /**
     * By a result.
     *
     * @param reading in the coherent SI unit, where one was taken or computed
     * @throws IllegalArgumentException if the step has no such outcome
     */
    public Walk take(Outcome outcome, Optional<Exact> reading) {
        Map<String, Exact> noted = new HashMap<>(readings);
        // A result without a number leaves none behind: what was read at an earlier visit is no reading of this one.
        reading.ifPresentOrElse(value -> noted.put(label(), value), () -> noted.remove(label()));
        Position.Move move = position.after(outcome);
        Map<String, String> left = setUp;
        Set<String> inForce = readHere();
        List<Suspects.Evidence> told = new ArrayList<>(evidence);
        Exact time = seconds;
        for (Position.PassedStep passed : move.passed()) {
            Map<String, String> before = left;
            left = with(with(left, passed.step().frame().sets(), procedure.scope()), passed.outcome().proves(), procedure.scope());
            inForce = inForce(inForce, passed.path(), before, left);
            if (passed.path().size() == 1) {
                told.add(new Suspects.Evidence(passed.step(), passed.outcome().key()));
            }
            boolean timedAbove = passed.path().subList(0, passed.path().size() - 1).stream().anyMatch(step -> time(step).isPresent());
            time = timedAbove ? time : time.plus(time(passed.step()).orElse(Exact.ZERO));
        }
        Position to = move.to().orElse(position);
        return new Walk(procedure, to, move.to().isEmpty(), left, inForce, Map.copyOf(noted), List.copyOf(told), time);
    }

    static Optional<Exact> time(Step step) {
        return step.frame().time().map(Written::value).filter(time -> time.unit().isKnown() && !time.unit().isLogarithmic()
                && time.dimension().equals(Dimension.TIME)).map(time -> time.base().max(Exact.ZERO));
    }

    /** What a step that computes computes from the readings so far; absent where one is missing. */
    public Optional<Exact> computed() {
        if (!(step() instanceof Step.Calculate calculate)) {
            return Optional.empty();
        }
        String prefix = label().substring(0, label().length() - step().name().text().length());
        Map<String, Exact> own = readings.entrySet().stream().filter(one -> one.getKey().startsWith(prefix)
                && one.getKey().indexOf('/', prefix.length()) < 0)
                .collect(Collectors.toMap(one -> one.getKey().substring(prefix.length()), Map.Entry::getValue));
        return ReadingEntry.computed(calculate, graph(), own);
    }

    private StepGraph graph() {
        List<Step> callers = callers();
        return callers.isEmpty() ? procedure : inside(callers.get(callers.size() - 1));
    }

    /** The routine that was entered at a step. */
    StepGraph inside(Step caller) {
        return ((Step.Perform) caller).routine().flatMap(procedure.scope()::routine).map(StepGraph.class::cast).orElse(procedure);
    }

    // ---- the set-up

    private static Map<String, String> starting(Scope scope) {
        Map<String, String> setUp = new LinkedHashMap<>();
        conditions(scope).forEach(condition -> setUp.put(condition.name().text(),
                condition.starts().filter(condition::has).orElse(condition.values().get(0)).text()));
        return forced(setUp, scope);
    }

    private static List<Condition> conditions(Scope scope) {
        return scope.conditions().stream().filter(condition -> !condition.values().isEmpty()).toList();
    }

    private static Map<String, String> with(Map<String, String> setUp, List<Setting> settings, Scope scope) {
        if (settings.isEmpty()) {
            return setUp;
        }
        Map<String, String> next = new LinkedHashMap<>(setUp);
        settings.forEach(one -> scope.condition(one.condition()).filter(condition -> condition.has(one.value()))
                .ifPresent(condition -> next.put(one.condition().text(), one.value().text())));
        return forced(next, scope);
    }

    /** Values that others force; of several for one condition the first. Those that force one another in a circle never settle. */
    private static Map<String, String> forced(Map<String, String> setUp, Scope scope) {
        boolean changed = true;
        for (int round = 0; changed && round <= setUp.size(); round++) {
            changed = false;
            for (Condition condition : conditions(scope)) {
                Optional<String> value = condition.becomes().stream().filter(rule -> condition.has(rule.value())
                        && rule.when().value().text().equals(setUp.get(rule.when().condition().text()))).map(rule -> rule.value().text()).findFirst();
                if (value.isPresent() && !value.get().equals(setUp.put(condition.name().text(), value.get()))) {
                    changed = true;
                }
            }
        }
        return setUp;
    }

    // ---- notes

    /** What becomes live or charged after a note was read is news, unless the step itself tells of it. */
    private Set<String> inForce(Set<String> before, List<Step> path, Map<String, String> from, Map<String, String> to) {
        boolean live = begins(Condition::live, from, to);
        boolean charged = begins(Condition::charged, from, to);
        if (!live && !charged) {
            return before;
        }
        Set<Hazard> told = path.stream().flatMap(this::notes).flatMap(note -> note.covers().stream()).map(Written::value)
                .collect(Collectors.toSet());
        Set<String> left = new LinkedHashSet<>(before);
        left.removeIf(name -> procedure.scope().notes().stream().filter(note -> note.name().text().equals(name))
                .flatMap(note -> note.covers().stream()).map(Written::value).filter(hazard -> !told.contains(hazard))
                .anyMatch(hazard -> live && lapsesLive(hazard) || charged && lapsesCharged(hazard)));
        return left;
    }

    /** Whether a note about the hazard is due again once something becomes live. */
    public static boolean lapsesLive(Hazard hazard) {
        return hazard == Hazard.SHOCK;
    }

    /** Whether a note about the hazard is due again once a charge comes back. */
    public static boolean lapsesCharged(Hazard hazard) {
        return hazard == Hazard.SHOCK || hazard == Hazard.STORED_CHARGE;
    }

    private boolean begins(Function<Condition, List<Name>> values, Map<String, String> from, Map<String, String> to) {
        return conditions(procedure.scope()).stream().anyMatch(condition -> !has(values.apply(condition), from.get(condition.name().text()))
                && has(values.apply(condition), to.get(condition.name().text())));
    }

    private static boolean has(List<Name> values, String value) {
        return values.stream().anyMatch(one -> one.text().equals(value));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.lang.reflect.RecordComponent;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.analysis.compare.Difference.Kind;
import org.faultwright.analysis.compare.Difference.Loss;
import org.faultwright.analysis.faults.RepairSteps;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;

/**
 * Two revisions of a procedure held against each other by what they mean: typed values, not words. A step that was only
 * called otherwise or moved between the procedure and a routine is told as that. Of the libraries counts what the
 * procedure uses of them.
 */
public final class ProcedureComparison {
    private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");

    private final Procedure was;
    private final Procedure now;
    private final List<Difference> found = new ArrayList<>();

    private ProcedureComparison(Procedure was, Procedure now) {
        this.was = calledAsIn(now, was);
        this.now = calledAsIn(was, now);
    }

    /** In the order of {@link Kind}; empty where both mean the same. */
    public static List<Difference> of(Procedure was, Procedure now) {
        ProcedureComparison comparison = new ProcedureComparison(was, now);
        comparison.compare();
        Map<String, Difference> once = new LinkedHashMap<>();
        comparison.found.forEach(one -> once.putIfAbsent(one.kind() + ":" + one, one));
        return once.values().stream().sorted(Comparator.comparing(Difference::kind).thenComparing(Difference::loss)).toList();
    }

    /**
     * The procedure with its conclusions of one fault called like the fault, where the other one leads to the fault and does not write them out:
     * such a conclusion is the same under whatever name.
     */
    private static Procedure calledAsIn(Procedure other, Procedure p) {
        Map<String, String> names = new LinkedHashMap<>();
        other.steps().stream().filter(step -> step.isUnderstood() && !ClosingStep.is(step) && !has(p.steps(), step)).forEach(end -> {
            List<Step> like = p.writtenSteps().stream().filter(step -> step instanceof Step.Conclude conclude && conclude.finds().size() == 1
                    && conclude.finds().get(0).text().equals(end.name().text()) && conclude.refersTo().isEmpty()).toList();
            if (like.size() == 1 && !has(other.steps(), like.get(0))) {
                names.put(like.get(0).name().text(), end.name().text());
            }
        });
        return names.isEmpty() ? p : p.with(p.faults(), p.begin(), p.steps().stream().map(step -> called(names, step)).toList(), p.examples().stream().map(one -> new Example(one.variation(), called(names, one).title(), one.of(), one.shows(),
                        one.endsAt().map(end -> called(names, end)), one.within(), one.at())).toList());
    }

    private static Step called(Map<String, String> names, Step step) {
        if (step instanceof Step.Conclude end) {
            return new Step.Conclude(called(names, step.name()), step.title(), end.finds(), end.findsNothing(), end.refersTo(), end.report(), end.frame(), end.at());
        }
        return step.renamed(called(names, step.name()), step.outcomes().stream().map(outcome -> new Outcome(outcome.head(),
                outcome.target().map(target -> called(names, target)), outcome.repeat().map(bound -> new Outcome.Repeat(bound.atMost(),
                        called(names, bound.otherwise()), bound.at())), outcome.proves(), outcome.normal(), outcome.at())).toList());
    }

    /** An example without a title of its own is called by what it says, with names in quotation marks. */
    private static Example called(Map<String, String> names, Example example) {
        if (example.isTitled()) {
            return example;
        }
        String title = QUOTED.matcher(example.title().text())
                .replaceAll(quoted -> Matcher.quoteReplacement("\"" + names.getOrDefault(quoted.group(1), quoted.group(1)) + "\""));
        return new Example(example.variation(), new Name(title, example.title().at()), example.of(), example.shows(), example.endsAt(), example.within(), example.at());
    }

    /** The step that closes the unit before a conclusion has its name, too. */
    private static Name called(Map<String, String> names, Name name) {
        String conclusion = ClosingStep.written(name.text());
        return names.containsKey(conclusion) ? new Name(name.text().substring(0, name.text().length() - conclusion.length()) + names.get(conclusion), name.at())
                : name;
    }

    private void compare() {
        Map<String, String> names = Renames.of(was, now);
        Set<String> usedThen = used(was);
        Set<String> usedNow = used(now);
        Map<String, String> declared = Renames.declared(used(was.scope().all().toList(), usedThen), used(now.scope().all().toList(), usedNow));
        Map<String, String> all = withClosings(names);
        declared.forEach(all::putIfAbsent);
        RecordValues values = new RecordValues(all);
        Map<String, Routine> routinesThen = routines(was, usedThen, values);
        Map<String, Routine> routinesNow = routines(now, usedNow, new RecordValues(Map.of()));
        RecordComparison records = new RecordComparison(values, was, now, found);
        declared.forEach((old, today) -> now.scope().all().filter(one -> one.name().text().equals(today)).findFirst().ifPresent(one -> found.add(
                new Difference(Kind.RECORD, one.getClass().getSimpleName() + " " + today + ": name", old, today, "", Optional.of(one.name().at())))));
        names.forEach((old, today) -> found.add(new Difference(Kind.STEPS, "Step " + today + ": name", old, today, "",
                now.steps().stream().filter(step -> step.name().text().equals(today)).findFirst().map(step -> step.name().at()))));

        List<Step> stepsThen = new ArrayList<>(was.steps());
        List<Step> stepsNow = new ArrayList<>(now.steps());
        moved(records, stepsThen, routinesNow, stepsNow, routinesThen);
        records.named(Kind.STEPS, "", "steps", stepsThen, stepsNow);
        routinesNow.forEach((name, routine) -> {
            if (routinesThen.containsKey(name)) {
                records.compare(Kind.STEPS, name, routinesThen.get(name), routine);
            }
        });
        records.named(Kind.STEPS, "", "routines", missing(routinesThen, routinesNow), missing(routinesNow, routinesThen));
        declared(records, usedThen, usedNow);
        records.named(Kind.FAULTS, "", "faults", faults(was), faults(now));
        examples(values, records, names);
        rest(records);
        Assurances.lost(was, now, values).forEach(lost -> found.add(new Difference(Kind.PROTECTION, lost.step().name() + ": proved and tested before it",
                String.join(", ", lost.was()), Difference.ABSENT, "on a way that comes to it", Loss.REMOVED, Optional.of(lost.step().name().at()))));
    }

    private void examples(RecordValues values, RecordComparison records, Map<String, String> names) {
        List<Example> then = was.examples().stream().map(one -> called(names, one)).toList();
        MatchedExamples same = new MatchedExamples(values, then, now.examples());
        then.stream().filter(same.renamed()::containsKey).forEach(one -> {
            Name today = same.called(one).title();
            found.add(new Difference(Kind.EXAMPLES, "Example " + today + ": name", one.title().text(), today.text(), "", Optional.of(today.at())));
        });
        records.named(Kind.EXAMPLES, "", "examples", then.stream().map(same::called).toList(), now.examples());
    }

    /**
     * A step that judges a repair passes once the remedy is done, whether the fault says so or not. What a fault reports is compared where it is
     * concluded, whether the conclusion is written out or an arrow leads to the fault.
     */
    private static List<Fault> faults(Procedure procedure) {
        return procedure.faults().stream().map(fault -> new Fault(fault.name(), fault.title(), fault.cases(),
                fault.remedies().isEmpty() ? fault.shows() : fault.shows().stream().filter(showing -> !passes(procedure, showing)).toList(), fault.remedies(),
                fault.hazards(), Optional.empty(), fault.at())).toList();
    }

    private static boolean passes(Procedure procedure, Showing showing) {
        return showing.possible().size() == 1 && procedure.step(showing.step()).filter(step -> RepairSteps.verifies(step, procedure.scope())
                && Results.outcome(step, showing.possible().get(0)).equals(Results.normal(step, procedure.scope()))).isPresent();
    }

    private void declared(RecordComparison records, Set<String> usedThen, Set<String> usedNow) {
        Map<Kind, List<Function<Scope, List<? extends Declaration>>>> kinds = new LinkedHashMap<>();
        kinds.put(Kind.SAFETY, List.of(Scope::conditions, Scope::notes));
        kinds.put(Kind.BENCH, List.of(Scope::instruments, Scope::points, Scope::parts, Scope::indicators));
        kinds.forEach((kind, lists) -> lists.forEach(list -> records.named(kind, "", "", used(list.apply(was.scope()), usedThen),
                used(list.apply(now.scope()), usedNow))));
    }

    private static List<? extends Declaration> used(List<? extends Declaration> declared, Set<String> used) {
        return declared.stream().filter(one -> used.contains(one.name().text())).toList();
    }

    /** What the procedure itself says beside its steps, faults and declarations. */
    private void rest(RecordComparison records) {
        Set<String> told = Set.of("steps", "faults", "examples");
        Procedure before = was;
        for (RecordComponent member : RecordValues.members(before)) {
            if (!told.contains(member.getName())) {
                records.member(RecordMembers.kind(member.getName(), Kind.RECORD), before, "", member.getName(), RecordValues.member(before, member),
                        RecordValues.member(now, member), RecordValues.place(now, member));
            }
        }
        records.member(Kind.LIMITS, before, "", "ambient", RecordValues.plain(was.scope().ambient()), RecordValues.plain(now.scope().ambient()),
                RecordValues.place(now.scope().ambient()));
        if (!was.decisionRule().equals(now.decisionRule()) && was.statedRule().isEmpty() && now.statedRule().isEmpty()) {
            records.member(Kind.LIMITS, before, "", "statedRule", was.decisionRule(), now.decisionRule(), Optional.empty());
        }
        if (was.closesBy().isEmpty() && now.closesBy().isEmpty()) {
            records.member(Kind.SAFETY, before, "", "closesBy", was.closing().map(Routine::name).orElse(null), now.closing().map(Routine::name).orElse(null),
                    Optional.empty());
        }
    }

    private static List<Routine> missing(Map<String, Routine> these, Map<String, Routine> in) {
        return these.entrySet().stream().filter(entry -> !in.containsKey(entry.getKey())).map(Map.Entry::getValue).toList();
    }

    /** Steps gone from the one graph and new in another are one step each, that has moved. */
    private void moved(RecordComparison records, List<Step> then, Map<String, Routine> routinesNow, List<Step> today,
            Map<String, Routine> routinesThen) {
        pair(records, then, today, routinesNow, true);
        pair(records, today, then, routinesThen, false);
    }

    private void pair(RecordComparison records, List<Step> own, List<Step> other, Map<String, Routine> routines, boolean intoRoutine) {
        for (Step step : List.copyOf(own)) {
            boolean stays = other.stream().anyMatch(like -> like.name().text().equals(step.name().text()));
            Stream<Map.Entry<String, Step>> elsewhere = routines.entrySet().stream().flatMap(routine -> routine.getValue().steps().stream()
                    .filter(like -> like.name().text().equals(step.name().text()) && like.getClass() == step.getClass())
                    .map(like -> Map.entry(routine.getKey(), like)));
            Map.Entry<String, Step> place = stays ? null : elsewhere.findFirst().orElse(null);
            if (place != null) {
                own.remove(step);
                String routine = "routine " + place.getKey();
                found.add(new Difference(Kind.STEPS, "Step " + step.name() + ": moved", intoRoutine ? "the procedure" : routine,
                        intoRoutine ? routine : "the procedure", "",
                        Optional.of((intoRoutine ? place.getValue() : step).name().at())));
                records.compare(Kind.STEPS, step.name().text(), intoRoutine ? step : place.getValue(),
                        intoRoutine ? place.getValue() : step);
            }
        }
    }

    /** Nobody wrote the step that closes the unit before a conclusion: it is called otherwise where the conclusion is. */
    private Map<String, String> withClosings(Map<String, String> names) {
        Map<String, String> all = new LinkedHashMap<>(names);
        now.steps().stream().filter(ClosingStep::is).map(step -> step.name().text()).forEach(today -> names.forEach((old, conclusion) -> {
            if (ClosingStep.written(today).equals(conclusion)) {
                all.put(today.substring(0, today.length() - conclusion.length()) + old, today);
            }
        }));
        return all;
    }

    private static boolean has(List<Step> steps, Step step) {
        return steps.stream().anyMatch(other -> other.name().text().equals(step.name().text()));
    }

    /** By what they are called today. */
    private static Map<String, Routine> routines(Procedure procedure, Set<String> used, RecordValues values) {
        Map<String, Routine> routines = new LinkedHashMap<>();
        procedure.scope().routines().stream().filter(routine -> used.contains(routine.name().text()))
                .forEach(routine -> routines.put(values.today(routine.name().text()), routine));
        return routines;
    }

    /** The names that the procedure says, and those that what they name says, and so on. */
    private static Set<String> used(Procedure procedure) {
        Set<String> names = new TreeSet<>();
        Deque<Object> open = new ArrayDeque<>(procedure.steps());
        open.addAll(procedure.faults());
        for (RecordComponent member : RecordValues.members(procedure)) {
            Object value = RecordValues.member(procedure, member);
            if (value instanceof Name name) {
                open.add(name);
            }
        }
        Scope scope = procedure.scope();
        List<Declaration> declared = scope.all().toList();
        while (!open.isEmpty()) {
            Object value = RecordValues.plain(open.pop());
            if (value instanceof Name name && names.add(name.text())) {
                declared.stream().filter(one -> one.name().text().equals(name.text())).forEach(open::push);
            } else if (value instanceof List<?> list) {
                list.stream().filter(item -> item != null).forEach(open::push);
            } else if (value instanceof Record) {
                for (RecordComponent member : RecordValues.members(value)) {
                    Object part = RecordValues.member(value, member);
                    if (part != null) {
                        open.push(part);
                    }
                }
            }
        }
        return names;
    }
}

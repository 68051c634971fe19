/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.measurement.Formulas;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * Writes a first draft of the tree from a fault table: the complaint is confirmed, the tests follow in the
 * order of the least expected time, each fault or group of faults is repaired by its remedy, the repair
 * verified, the set-up put back, and concluded. Faults that nothing tells apart are repaired one after
 * the other, the most frequent first. What the table names and nobody has written yet becomes a step to
 * be filled in. A draft: its words, times and notes are the author's to complete.
 */
public final class DraftTree {
    /** In seconds, for tests that state no time. */
    static final Exact USUAL_TIME = Exact.of(60);
    private static final int DEEPEST = 3;

    /**
     * @param text    the whole text with the draft in it; absent where none can be made
     * @param remarks what the author should know of it, each a sentence
     */
    public record Draft(Optional<String> text, List<String> remarks) {
    }

    private final Procedure procedure;
    private final DraftSteps steps;
    private final DraftWriter writer;
    private final Bench bench;
    private final SourceRange here;
    private final List<Fault> faults;
    private final Map<List<String>, List<Fault>> goals;
    private final List<Step> tests;
    private final DraftEndings ends;
    private final SetUpChanges changes;
    private final Set<String> remarks = new LinkedHashSet<>();
    private final FaultTable table;
    private final PresumedTable presumed;

    private DraftTree(Procedure procedure) {
        this.procedure = procedure;
        this.steps = new DraftSteps(procedure);
        this.writer = new DraftWriter(procedure, steps);
        this.bench = new Bench(procedure.scope());
        this.here = procedure.name().at();
        this.table = FaultTable.of(withSteps());
        this.presumed = new PresumedTable(table);
        this.faults = table.faults();
        this.goals = faults.stream().collect(Collectors.groupingBy(this::goal, LinkedHashMap::new, Collectors.toList()));
        this.ends = new DraftEndings(procedure, steps);
        this.tests = steps.all().stream().filter(this::isTest).limit(TestProblem.MOST).toList();
        this.changes = new SetUpChanges(bench, new Times(procedure.scope()),
                new DraftChanges(procedure, steps).movers());
    }

    /** A draft for this procedure; without a text, and with the reason, where it has no faults or cannot be read. */
    public static Draft of(Procedure procedure) {
        if (!procedure.problems().isEmpty()) {
            ReadingProblem first = procedure.problems().get(0);
            return new Draft(Optional.empty(), List.of("The text has words that cannot be read, the first in line "
                    + first.at().line() + ": " + first.message() + " Put these right first."));
        }
        if (procedure.faults().isEmpty() || procedure.faults().size() > TestProblem.MOST) {
            return new Draft(Optional.empty(), List.of(procedure.faults().isEmpty()
                    ? "The procedure has no faults: a draft is made from what they show."
                    : "The procedure has more than " + TestProblem.MOST + " faults: split it first."));
        }
        return new DraftTree(procedure).draft();
    }

    private Procedure withSteps() {
        Procedure p = procedure;
        return new Procedure(p.source(), p.name(), p.title(), p.uses(), p.libraries(), p.equipment(), p.revision(),
                p.complaints(), p.tools(), p.own(), p.statedRule(), p.closesBy(), p.faults(), p.begin(), steps.all(), p.examples(),
                p.problems(), p.at());
    }

    /** Faults with the same remedies need not be told apart; one without any stands for itself. */
    private List<String> goal(Fault fault) {
        return fault.remedies().isEmpty() ? List.of("", fault.name().text())
                : fault.remedies().stream().map(Name::text).toList();
    }

    private boolean isTest(Step step) {
        return step.outcomes().size() > 1 && !(step instanceof Step.Do) && !(step instanceof Step.Perform)
                && step.frame().confirms().isEmpty() && step.frame().verifies().isEmpty() && !table.isSilentAbout(step);
    }

    private Draft draft() {
        List<List<String>> keys = List.copyOf(goals.keySet());
        Step confirm = ends.confirmation();
        List<Integer> start = bench.start();
        Optional<SetUpChanges.Way> ready = changes.to(start, to -> bench.holds(to, confirm.frame().needs()));
        List<Integer> seen = ready.map(SetUpChanges.Way::to).orElse(start);
        TestProblem problem = new TestProblem(IntStream.range(0, faults.size()).mapToObj(table::weight).toList(),
                faults.stream().map(fault -> keys.indexOf(goal(fault))).toList(),
                tests.stream().map(step -> test(step, keys)).toList(), new DraftSetUps(tests, keys.stream()
                        .map(this::firstAct).toList(), bench, changes, seen));
        TestTree order = TestSequencer.solve(problem).tree();
        String begin = lead(ready, writer.place(confirm, confirmed(confirm, order, seen)), 0);
        unused();
        String text = writer.text(begin);
        remarks.add("This is a draft: complete its words, times, notes and limits before anybody works by it.");
        return new Draft(Optional.of(text), List.copyOf(remarks));
    }

    private Optional<Step> firstAct(List<String> goal) {
        return goals.get(goal).get(0).remedies().stream().findFirst().flatMap(name -> steps.step(name.text()));
    }

    private List<String> confirmed(Step confirm, TestTree order, List<Integer> seen) {
        List<String> targets = new ArrayList<>();
        boolean silent = table.isSilentAbout(confirm);
        for (int i = 0; i < confirm.outcomes().size(); i++) {
            Outcome outcome = confirm.outcomes().get(i);
            boolean goesOn = silent ? i == 0 : faults.stream()
                    .anyMatch(fault -> table.cell(fault, confirm).outcomes().contains(outcome.key()));
            List<Integer> after = bench.after(seen, confirm, outcome).orElse(seen);
            targets.add(goesOn ? realise(order, after) : putBack(after, ends.notSeen(), 0));
        }
        return targets;
    }

    private TestProblem.Test test(Step step, List<List<String>> keys) {
        List<String> readings = step instanceof Step.Calculate calculate ? calculate.formula().flatMap(f ->
                Formulas.computable(f.value())).map(f -> List.copyOf(f.readings()))
                .orElse(List.of()) : List.of();
        return new TestProblem.Test(faults.stream().map(fault -> presumed.shares(fault, step)).toList(),
                IntStream.range(0, tests.size()).filter(i -> readings.contains(tests.get(i).name().text())).boxed().toList(),
                IntStream.range(0, keys.size()).filter(goal -> confirming(goals.get(keys.get(goal))).filter(step::equals)
                        .isPresent()).boxed().toList());
    }

    /** The quickest test that shows, for these faults, what it shows for no other: they are not repaired before it is asked. */
    private Optional<Step> confirming(List<Fault> of) {
        return tests.stream().filter(step -> of.stream().allMatch(fault -> faults.stream().filter(other -> !of.contains(other))
                .allMatch(other -> presumed.cell(fault, step).excludes(presumed.cell(other, step)))))
                .min(Comparator.comparing(step -> Times.stated(step).orElse(USUAL_TIME)));
    }

    private String realise(TestTree order, List<Integer> setUp) {
        if (order instanceof TestTree.Left left) {
            List<List<String>> here = left.faults().stream().map(faults::get).sorted(Comparator.comparing(
                    (Fault fault) -> table.weight(fault)).reversed()).map(this::goal).distinct().toList();
            return repair(here, setUp);
        }
        TestTree.Ask ask = (TestTree.Ask) order;
        Step step = tests.get(ask.test());
        faults(order).stream().map(faults::get).filter(fault -> table.cell(fault, step).isSilent())
                .forEach(fault -> presumed.presumed(step).ifPresent(result -> presume(fault, step, result)));
        Optional<SetUpChanges.Way> ready = ready(setUp, step);
        List<Integer> now = ready.map(SetUpChanges.Way::to).orElse(setUp);
        List<String> targets = new ArrayList<>();
        for (int i = 0; i < step.outcomes().size(); i++) {
            List<Integer> after = bench.after(now, step, step.outcomes().get(i)).orElse(now);
            targets.add(ask.next().containsKey(i) ? realise(ask.next().get(i), after) : putBack(after, ends.handOn(), 0));
        }
        return lead(ready, writer.place(step, targets), 0);
    }

    private static List<Integer> faults(TestTree order) {
        return order instanceof TestTree.Ask ask ? ask.next().values().stream().flatMap(next -> faults(next).stream()).distinct()
                .toList() : ((TestTree.Left) order).faults();
    }

    private void presume(Fault fault, Step step, String result) {
        writer.presume(fault, step.name() + " " + ResultWords.written(result));
        remarks.add("The table did not say what " + step.name() + " shows for " + fault.name() + ": " + result
                + " is written there.");
    }

    private Optional<SetUpChanges.Way> ready(List<Integer> setUp, Step step) {
        Optional<SetUpChanges.Way> way = changes.to(setUp, to -> bench.holds(to, step.frame().needs()));
        if (way.isEmpty()) {
            remarks.add("Nothing in reach brings about what " + step.name() + " needs.");
        }
        return way;
    }

    /** Repairs and verifies for the first goal; where that does not hold, goes on to the next. */
    private String repair(List<List<String>> goals, List<Integer> setUp) {
        List<Fault> found = this.goals.get(goals.get(0));
        List<Name> remedies = found.get(0).remedies();
        if (remedies.isEmpty()) {
            List<Fault> together = goals.stream().flatMap(goal -> this.goals.get(goal).stream()).toList();
            return putBack(setUp, ends.conclusion(together, false), 0);
        }
        List<Step> acts = remedies.stream().map(name -> steps.step(name.text()).orElseThrow()).toList();
        return act(acts, 0, goals, setUp);
    }

    private String act(List<Step> acts, int next, List<List<String>> goals, List<Integer> setUp) {
        boolean verifying = next == acts.size();
        Step step = verifying ? ends.verification(acts.get(next - 1)) : acts.get(next);
        Optional<SetUpChanges.Way> ready = ready(setUp, step);
        List<Integer> now = ready.map(SetUpChanges.Way::to).orElse(setUp);
        List<String> targets = new ArrayList<>();
        int passing = passing(step);
        for (int i = 0; i < step.outcomes().size(); i++) {
            List<Integer> after = bench.after(now, step, step.outcomes().get(i)).orElse(now);
            if (!verifying) {
                targets.add(i == 0 ? act(acts, next + 1, goals, after) : putBack(after, ends.handOn(), 0));
            } else if (i == passing) {
                targets.add(putBack(after, ends.conclusion(this.goals.get(goals.get(0)), true), 0));
            } else {
                targets.add(goals.size() > 1 ? repair(goals.subList(1, goals.size()), after) : putBack(after, ends.handOn(), 0));
            }
        }
        return lead(ready, writer.place(step, targets), 0);
    }

    private static int passing(Step step) {
        List<String> keys = step.outcomes().stream().map(Outcome::key).toList();
        return keys.contains(Step.WITHIN) ? keys.indexOf(Step.WITHIN) : Math.max(0, keys.indexOf("yes"));
    }

    private String putBack(List<Integer> setUp, Step conclusion, int depth) {
        return lead(changes.to(setUp, bench::isPutBack), writer.place(conclusion, List.of()), depth);
    }

    /** The changes of the set-up before a step. What leaves a routine otherwise than it should is handed on. */
    private String lead(Optional<SetUpChanges.Way> way, String target, int depth) {
        String to = target;
        List<SetUpChanges.Mover> movers = way.map(SetUpChanges.Way::movers).orElse(List.of());
        for (int i = movers.size() - 1; i >= 0; i--) {
            SetUpChanges.Mover mover = movers.get(i);
            List<String> targets = new ArrayList<>();
            for (Outcome outcome : mover.step().outcomes()) {
                targets.add(outcome == mover.goesOn() ? to : otherwise(way.orElseThrow(), i, outcome, depth));
            }
            to = writer.place(mover.step(), targets);
        }
        return to;
    }

    private String otherwise(SetUpChanges.Way way, int place, Outcome outcome, int depth) {
        Optional<List<Integer>> before = Optional.of(way.from());
        for (int i = 0; i < place; i++) {
            SetUpChanges.Mover mover = way.movers().get(i);
            before = before.flatMap(setUp -> bench.after(setUp, mover.step(), mover.goesOn()));
        }
        Optional<List<Integer>> after = before.flatMap(setUp -> bench.after(setUp, way.movers().get(place).step(), outcome));
        return after.isPresent() && depth < DEEPEST ? putBack(after.get(), ends.handOn(), depth + 1)
                : writer.place(ends.handOn(), List.of());
    }

    /** Steps that the order does without are written too, so that what the table says of them has a place. */
    private void unused() {
        List<Step> unused = steps.all().stream().filter(step -> !(step instanceof Step.Conclude) && isNamed(step)
                && writer.namesOf(step).isEmpty()).toList();
        unused.stream().filter(step -> !isWhole(step)).forEach(step -> writer.place(step,
                step.outcomes().stream().map(outcome -> writer.place(ends.handOn(), List.of())).toList()));
        if (!unused.isEmpty()) {
            remarks.add("The draft does not need " + String.join(", ", unused.stream().map(step -> step.name().text()).toList())
                    + ": the other steps tell the faults apart, or their remedies settle it. Take them out, or let an outcome"
                    + " lead to them.");
        }
    }

    private boolean isNamed(Step step) {
        String name = step.name().text();
        return procedure.step(step.name()).isPresent() || procedure.faults().stream().anyMatch(fault ->
                fault.shows().stream().anyMatch(showing -> showing.step().text().equals(name))
                        || fault.remedies().stream().anyMatch(remedy -> remedy.text().equals(name)));
    }

    private boolean isWhole(Step step) {
        return procedure.step(step.name()).filter(written -> !written.outcomes().isEmpty()).isPresent();
    }
}

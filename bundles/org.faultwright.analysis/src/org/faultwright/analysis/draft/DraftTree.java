/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.faults.DraftSteps;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.PresumedTable;
import org.faultwright.analysis.measurement.Formulas;
import org.faultwright.analysis.order.SetUpChanges;
import org.faultwright.analysis.order.SetUpSimulator;
import org.faultwright.analysis.paths.Closing;
import org.faultwright.analysis.sequence.TestProblem;
import org.faultwright.analysis.sequence.TestSequencer;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * Builds a first draft of the tree from a fault table: the complaint is confirmed, the tests follow in the
 * order of the least expected time, each fault or group of faults is repaired by its remedy, the repair
 * verified, the set-up put back, and concluded. Faults that nothing tells apart are repaired one after
 * the other, the most frequent first. What the table names and nobody has written yet becomes a step to
 * be filled in; the table itself stays as it is. {@link TriedDraft} tries what is built here.
 */
final class DraftTree {
    /** In seconds, for tests that state no time. */
    static final Exact USUAL_TIME = Exact.of(60);
    private static final int DEEPEST = 3;

    /**
     * @param text    the whole text with the draft in it
     * @param remarks what the author should know of it, each a sentence
     * @param copies  by the name of each step that is written a second time, the step it repeats
     */
    record Built(String text, List<String> remarks, Map<String, String> copies) {
    }

    private final Procedure procedure;
    private final Map<String, List<Setting>> safe;
    private final DraftSteps steps;
    private final DraftWriter writer;
    private final SetUpSimulator bench;
    private final SourceRange here;
    private final List<Fault> faults;
    private final Map<List<String>, List<Fault>> goals;
    private final List<Step> tests;
    private final DraftEndings ends;
    private final SetUpChanges changes;
    private final Set<String> remarks = new LinkedHashSet<>();
    /** By step, the faults of which the table does not say what it shows. */
    private final Map<Step, Set<String>> taken = new LinkedHashMap<>();
    /** What the closing routine brings back before each conclusion. */
    private final Set<String> closed;
    private final FaultTable table;
    private final PresumedTable presumed;

    /** @param safe by the name of a step, what must hold when it is come to, besides what it says that it needs */
    private DraftTree(Procedure procedure, Map<String, List<Setting>> safe) {
        this.procedure = procedure;
        this.safe = safe;
        this.steps = new DraftSteps(procedure);
        this.writer = new DraftWriter(procedure, steps);
        this.bench = new SetUpSimulator(procedure.scope());
        this.closed = Closing.broughtBack(procedure);
        this.here = procedure.name().at();
        this.table = FaultTable.of(steps.completed());
        this.presumed = PresumedTable.modest(table);
        this.faults = table.faults();
        this.goals = faults.stream().collect(Collectors.groupingBy(this::goal, LinkedHashMap::new, Collectors.toList()));
        this.ends = new DraftEndings(procedure, steps);
        this.tests = steps.all().stream().filter(this::isTest).limit(TestProblem.MOST).toList();
        this.changes = new SetUpChanges(bench, new StepTimes(procedure.scope()),
                new DraftChanges(procedure, steps).movers(), (step, setUp) -> bench.holds(setUp, safe.getOrDefault(step.name().text(), List.of())));
    }

    static Built of(Procedure procedure, Map<String, List<Setting>> safe) {
        return new DraftTree(procedure, safe).draft();
    }

    /** Why no draft can be made of a procedure as it is. */
    static Optional<String> obstacle(Procedure procedure) {
        if (!procedure.problems().isEmpty()) {
            ReadingProblem first = procedure.problems().get(0);
            return Optional.of("The text has words that cannot be read, the first in line " + first.at().line() + ": " + first.message()
                    + " Put these right first.");
        }
        return procedure.faults().isEmpty() ? Optional.of("The procedure has no faults: a draft is made from what they show.")
                : procedure.faults().size() > TestProblem.MOST ? Optional.of("The procedure has more than " + TestProblem.MOST
                        + " faults: split it first.") : Optional.empty();
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

    private Built draft() {
        List<List<String>> keys = List.copyOf(goals.keySet());
        Step confirm = ends.confirmation();
        List<Integer> start = bench.start();
        Optional<SetUpChanges.SetUpRoute> ready = ready(start, confirm);
        List<Integer> seen = ready.map(SetUpChanges.SetUpRoute::to).orElse(start);
        TestProblem problem = new TestProblem(IntStream.range(0, faults.size()).mapToObj(table::weight).toList(),
                faults.stream().map(fault -> keys.indexOf(goal(fault))).toList(),
                tests.stream().map(step -> test(step, keys)).toList(), new DraftSetUps(tests, keys.stream()
                        .map(this::firstAct).toList(), this::isReadyFor, bench, changes, seen));
        TestTree order = TestSequencer.solve(problem).tree();
        String begin = lead(ready, writer.place(confirm, confirmed(confirm, order, seen)), 0);
        unused();
        String text = writer.text(begin);
        tellWhatIsTaken();
        remarks.add("This is a draft: complete its words, times, notes and limits before anybody works by it.");
        return new Built(text, List.copyOf(remarks), writer.copies());
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
            targets.add(goesOn ? realise(order, after, Set.of(confirm)) : putBack(after, ends.notSeen(), 0));
        }
        return targets;
    }

    private TestProblem.Test test(Step step, List<List<String>> keys) {
        List<String> readings = readings(step);
        return new TestProblem.Test(faults.stream().map(fault -> presumed.shares(fault, step)).toList(),
                IntStream.range(0, tests.size()).filter(i -> readings.contains(tests.get(i).name().text())).boxed().toList(),
                IntStream.range(0, keys.size()).filter(goal -> confirming(goals.get(keys.get(goal))).filter(step::equals)
                        .isPresent()).boxed().toList());
    }

    /** The quickest test that shows, for these faults, what it shows for no other: they are not repaired before it is asked. */
    private Optional<Step> confirming(List<Fault> of) {
        return tests.stream().filter(step -> of.stream().allMatch(fault -> faults.stream().filter(other -> !of.contains(other))
                .allMatch(other -> presumed.cell(fault, step).excludes(presumed.cell(other, step)))))
                .min(Comparator.comparing(step -> StepTimes.stated(step).orElse(USUAL_TIME)));
    }

    /** @param asked what has been asked on the way */
    private String realise(TestTree order, List<Integer> setUp, Set<Step> asked) {
        if (order instanceof TestTree.Left left) {
            List<List<String>> here = left.faults().stream().map(faults::get).sorted(Comparator.comparing(
                    (Fault fault) -> table.weight(fault)).reversed()).map(this::goal).distinct().toList();
            return repair(here, setUp);
        }
        TestTree.Ask ask = (TestTree.Ask) order;
        Step step = tests.get(ask.test());
        Optional<Step> reading = reading(step, asked);
        if (reading.isPresent()) {
            return read(reading.get(), order, setUp, with(asked, reading.get()));
        }
        faults(order).stream().map(faults::get).filter(fault -> table.cell(fault, step).isSilent())
                .forEach(fault -> taken.computeIfAbsent(step, s -> new LinkedHashSet<>()).add(fault.name().text()));
        Optional<SetUpChanges.SetUpRoute> ready = ready(setUp, step);
        List<Integer> now = ready.map(SetUpChanges.SetUpRoute::to).orElse(setUp);
        List<String> targets = new ArrayList<>();
        for (int i = 0; i < step.outcomes().size(); i++) {
            List<Integer> after = bench.after(now, step, step.outcomes().get(i)).orElse(now);
            targets.add(ask.next().containsKey(i) ? realise(ask.next().get(i), after, with(asked, step)) : putBack(after, ends.handOn(), 0));
        }
        return lead(ready, writer.place(step, targets), 0);
    }

    private static Set<Step> with(Set<Step> asked, Step step) {
        Set<Step> more = new HashSet<>(asked);
        more.add(step);
        return more;
    }

    /** A reading that a calculation needs, that tells nothing by itself and has not been taken. */
    private Optional<Step> reading(Step step, Set<Step> asked) {
        return readings(step).stream().flatMap(name -> steps.step(name).stream())
                .filter(reading -> !tests.contains(reading) && !asked.contains(reading)).findFirst();
    }

    /** Takes a reading on the way to a test; what a sound unit does not show there is handed on. */
    private String read(Step reading, TestTree order, List<Integer> setUp, Set<Step> asked) {
        Optional<SetUpChanges.SetUpRoute> ready = ready(setUp, reading);
        List<Integer> now = ready.map(SetUpChanges.SetUpRoute::to).orElse(setUp);
        Optional<Outcome> normal = Results.normal(reading, procedure.scope());
        List<String> targets = new ArrayList<>();
        for (Outcome outcome : reading.outcomes()) {
            List<Integer> after = bench.after(now, reading, outcome).orElse(now);
            targets.add(normal.isEmpty() || normal.get() == outcome ? realise(order, after, asked) : putBack(after, ends.handOn(), 0));
        }
        return lead(ready, writer.place(reading, targets), 0);
    }

    private static List<String> readings(Step step) {
        return step instanceof Step.Calculate calculate ? calculate.formula().flatMap(f -> Formulas.computable(f.value()))
                .map(f -> List.copyOf(f.readings())).orElse(List.of()) : List.of();
    }

    private static List<Integer> faults(TestTree order) {
        return order instanceof TestTree.Ask ask ? ask.next().values().stream().flatMap(next -> faults(next).stream()).distinct()
                .toList() : ((TestTree.Left) order).faults();
    }

    private void tellWhatIsTaken() {
        taken.forEach((step, faults) -> remarks.add("The table does not say what \"" + step.name() + "\" shows for " + String.join(", ",
                faults.stream().map(fault -> '"' + fault + '"').toList()) + presumed.presumed(step)
                .map(result -> "; the draft takes it to be \"" + result + "\".").orElse(": each of them is looked for on every outcome.")));
    }

    private Optional<SetUpChanges.SetUpRoute> ready(List<Integer> setUp, Step step) {
        Optional<SetUpChanges.SetUpRoute> way = changes.to(setUp, to -> isReadyFor(step, to));
        if (way.isEmpty()) {
            remarks.add("Nothing in reach brings about what \"" + step.name() + "\" needs.");
        }
        return way;
    }

    /** What the step says that it needs holds, what it must find for safety, and what the routine needs that it performs. */
    private boolean isReadyFor(Step step, List<Integer> setUp) {
        return bench.holds(setUp, step.frame().needs()) && bench.holds(setUp, safe.getOrDefault(step.name().text(), List.of()))
                && step.outcomes().stream().allMatch(outcome -> bench.all(setUp, step, outcome).isPresent());
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
        Optional<SetUpChanges.SetUpRoute> ready = ready(setUp, step);
        List<Integer> now = ready.map(SetUpChanges.SetUpRoute::to).orElse(setUp);
        List<String> targets = new ArrayList<>();
        int passing = verifying ? ends.passing(step) : 0;
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

    private String putBack(List<Integer> setUp, Step conclusion, int depth) {
        return lead(changes.to(setUp, to -> bench.isPutBack(to, closed)), writer.place(conclusion, List.of()), depth);
    }

    /** The changes of the set-up before a step. What leaves a routine otherwise than it should is handed on. */
    private String lead(Optional<SetUpChanges.SetUpRoute> way, String target, int depth) {
        String to = target;
        List<SetUpChanges.ChangingStep> movers = way.map(SetUpChanges.SetUpRoute::movers).orElse(List.of());
        for (int i = movers.size() - 1; i >= 0; i--) {
            SetUpChanges.ChangingStep mover = movers.get(i);
            List<String> targets = new ArrayList<>();
            for (Outcome outcome : mover.step().outcomes()) {
                targets.add(outcome == mover.goesOn() ? to : otherwise(way.orElseThrow(), i, outcome, depth));
            }
            to = writer.place(mover.step(), targets);
        }
        return to;
    }

    private String otherwise(SetUpChanges.SetUpRoute way, int place, Outcome outcome, int depth) {
        Optional<List<Integer>> before = Optional.of(way.from());
        for (int i = 0; i < place; i++) {
            SetUpChanges.ChangingStep mover = way.movers().get(i);
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

    /** Whether it leads on as its author wrote it; what only leads round in a circle does not. */
    private boolean isWhole(Step step) {
        return procedure.step(step.name()).filter(written -> !written.outcomes().isEmpty() && comesToAnEnd(written)).isPresent();
    }

    private boolean comesToAnEnd(Step step) {
        Set<Step> seen = new LinkedHashSet<>(Set.of(step));
        List<Step> open = new ArrayList<>(seen);
        for (int i = 0; i < open.size(); i++) {
            if (open.get(i) instanceof Step.Conclude) {
                return true;
            }
            open.get(i).outcomes().stream().flatMap(outcome -> outcome.target().stream()).flatMap(to -> procedure.step(to).stream())
                    .filter(seen::add).forEach(open::add);
        }
        return false;
    }
}

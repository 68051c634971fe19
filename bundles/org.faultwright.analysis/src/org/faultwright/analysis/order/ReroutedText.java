/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.WholeLines;
import org.faultwright.analysis.examples.ExampleEntries;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.analysis.faults.FaultSignature;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.faults.PresumedTable;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.faults.ShowingText;
import org.faultwright.analysis.paths.Closing;
import org.faultwright.analysis.paths.RunningOn;
import org.faultwright.analysis.paths.Understood;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/**
 * A {@link Rerouting} as changes of the text, and the procedure as it will then be read, so that it can be
 * checked before anybody is shown the change. Comments stay where they are.
 */
final class ReroutedText {
    private final Procedure procedure;
    private final Rerouting rerouting;
    private final LinkedSteps tree;
    private final List<Fix.Edit> edits = new ArrayList<>();
    private final Map<String, List<Rerouting.ReroutedStep>> copiesOf = new HashMap<>();
    private final Set<String> dropped;
    private final Procedure changed;

    ReroutedText(Procedure procedure, Rerouting rerouting) {
        this.procedure = procedure;
        this.rerouting = rerouting;
        this.tree = rerouting.tree();
        this.dropped = rerouting.dropped().stream().map(step -> tree.step(step).name().text()).collect(Collectors.toSet());
        rerouting.placed().stream().filter(rerouting::isCopy).forEach(copy -> copiesOf
                .computeIfAbsent(tree.step(copy.original()).name().text(), s -> new ArrayList<>()).add(copy));
        List<Step> steps = steps();
        Optional<Name> begin = begin();
        List<Fault> faults = procedure.faults().stream().map(this::fault).toList();
        Procedure before = with(begin, steps, faults, procedure.examples());
        this.changed = with(begin, steps, faults, examples(before));
    }

    private Procedure with(Optional<Name> begin, List<Step> steps, List<Fault> faults, List<Example> examples) {
        return Closing.again(procedure.with(faults, begin, steps, examples));
    }

    /** The procedure as it will be. */
    Procedure changed() {
        return changed;
    }

    /** The steps that nothing leads to any more, by name. */
    List<String> dropped() {
        return dropped.stream().sorted().toList();
    }

    /** By the name of each step that is there a second time, the step it repeats. */
    Map<String, String> copies() {
        Map<String, String> copies = new HashMap<>();
        copiesOf.forEach((original, all) -> all.forEach(copy -> copies.put(copy.name(), original)));
        return copies;
    }

    /** The changes, from the top of the text down; what is put in where something is taken out is one change. */
    List<Fix.Edit> edits() {
        Map<Integer, Fix.Edit> byPlace = new TreeMap<>();
        edits.forEach(edit -> byPlace.merge(edit.at().offset(), edit, (one, other) -> new Fix.Edit(
                one.at().length() > 0 ? one.at() : other.at(), one.at().length() > 0
                        ? other.replacement() + one.replacement() : one.replacement() + other.replacement())));
        return byPlace.isEmpty() ? List.of() : KeptArrows.kept(procedure, new Fix("", List.copyOf(byPlace.values()))).edits();
    }

    private List<Step> steps() {
        Map<Integer, Map<Integer, String>> changes = rerouting.changes();
        Map<Integer, List<Rerouting.ReroutedStep>> copies = rerouting.placed().stream().filter(rerouting::isCopy)
                .collect(Collectors.groupingBy(Rerouting.ReroutedStep::original, LinkedHashMap::new, Collectors.toList()));
        List<Step> steps = new ArrayList<>();
        for (int number = 0; number < tree.size(); number++) {
            Step step = tree.step(number);
            if (step.isUnderstood()) {
                steps.add(step);
                continue;
            }
            if (dropped.contains(step.name().text())) {
                SourceRange gone = WholeLines.alone(step.at());
                edits.add(new Fix.Edit(gone, Remarks.keptFrom(gone.text(), "")));
            } else {
                Map<Integer, String> targets = changes.getOrDefault(number, Map.of());
                steps.add(step.renamed(step.name(), outcomes(step, targets, true)));
            }
            for (Rerouting.ReroutedStep copy : copies.getOrDefault(number, List.of())) {
                Name name = new Name(copy.name(), step.name().at());
                steps.add(step.renamed(name, outcomes(step, copy.targets(), false)));
                edits.add(new Fix.Edit(new SourceRange(step.at().source(), step.at().end(), 0), "\n" + copied(step, copy)));
            }
        }
        return steps;
    }

    private List<Outcome> outcomes(Step step, Map<Integer, String> targets, boolean edited) {
        List<Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < step.outcomes().size(); i++) {
            Outcome outcome = step.outcomes().get(i);
            Optional<Name> old = outcome.target();
            String target = targets.get(i);
            if (target == null || old.isEmpty() || old.get().text().equals(target)) {
                outcomes.add(outcome);
                continue;
            }
            if (edited) {
                edits.add(new Fix.Edit(old.get().at(), outcome.isUnderstood() ? ResultWords.arrow(outcome, asWritten(target)) : asWritten(target)));
            }
            outcomes.add(new Outcome(outcome.head(), Optional.of(new Name(target, old.get().at())), outcome.repeat(),
                    outcome.proves(), outcome.normal(), outcome.at()));
        }
        return outcomes;
    }

    /** The text of a step once more, under its new name and with its own arrows. */
    private String copied(Step step, Rerouting.ReroutedStep copy) {
        StringBuilder text = new StringBuilder(step.at().text());
        int start = step.at().offset();
        for (int i = step.outcomes().size() - 1; i >= 0; i--) {
            Optional<SourceRange> old = step.outcomes().get(i).target().map(Name::at);
            boolean runsOn = runsOn(step.outcomes().get(i));
            String target = runsOn && copy.targets().get(i) == null ? step.outcomes().get(i).target().orElseThrow().text() : copy.targets().get(i);
            if (old.isPresent() && target != null) {
                Outcome outcome = step.outcomes().get(i);
                boolean isSaid = runsOn || old.get().end() > old.get().offset() || !ClosingStep.written(outcome.target().orElseThrow().text()).equals(asWritten(target));
                text.replace(old.get().offset() - start, old.get().end() - start, !isSaid ? ""
                        : outcome.isUnderstood() ? ResultWords.arrow(outcome, asWritten(target)) : asWritten(target));
            }
        }
        if (step instanceof Step.Perform perform) {
            perform.namesake().ifPresent(routine -> text.insert(routine.at().offset() - start, " by " + routine.text()));
        }
        SourceRange name = step.name().at();
        return text.replace(name.offset() - start, name.end() - start, copy.name()).toString();
    }

    private boolean runsOn(Outcome outcome) {
        return RunningOn.arrows(procedure).stream().anyMatch(arrow -> arrow.outcome() == outcome);
    }

    /** Where closing is put in, the text itself leads to the conclusion. */
    private String asWritten(String target) {
        return rerouting.placed().stream().filter(rerouting::isCopy).filter(copy -> copy.name().equals(target)
                && ClosingStep.is(tree.step(copy.original()))).map(copy -> tree.step(copy.original()).name().text()).findFirst()
                .map(ClosingStep::written).orElseGet(() -> ClosingStep.written(target));
    }

    private Optional<Name> begin() {
        if (!rerouting.beginsAtRoot()) {
            return procedure.begin();
        }
        if (procedure.begin().isPresent()) {
            Name written = procedure.begin().get();
            if (!written.text().equals(rerouting.entry())) {
                edits.add(new Fix.Edit(written.at(), rerouting.entry()));
            }
            return Optional.of(new Name(rerouting.entry(), written.at()));
        }
        Step first = procedure.steps().get(0);
        edits.add(new Fix.Edit(new SourceRange(first.at().source(), first.at().offset(), 0),
                "begin at " + rerouting.entry() + "\n\n"));
        return Optional.of(new Name(rerouting.entry(), first.name().at()));
    }

    /** Copies show for a fault what their originals do; of dropped steps nothing more is said. */
    private Fault fault(Fault fault) {
        List<Showing> shows = new ArrayList<>();
        for (Showing showing : fault.shows()) {
            if (!dropped.contains(showing.step().text())) {
                shows.add(showing);
            }
            for (Rerouting.ReroutedStep copy : copiesOf.getOrDefault(showing.step().text(), List.of())) {
                if (rerouting.comesTo(fault, copy)) {
                    shows.add(named(showing, copy.name()));
                    edits.add(new Fix.Edit(new SourceRange(showing.at().source(), showing.at().end(), 0),
                            ", " + renamed(showing, copy.name())));
                }
            }
        }
        edits.addAll(ShowingText.without(fault.written(), showing -> dropped.contains(showing.step().text())));
        return new Fault(fault.name(), fault.title(), fault.cases(), shows, fault.remedies(), fault.hazards(), fault.report(), fault.at());
    }

    private static Showing named(Showing showing, String step) {
        return new Showing(new Name(step, showing.step().at()), showing.possible(), showing.at());
    }

    private static String renamed(Showing showing, String step) {
        SourceRange name = showing.step().at();
        return step + showing.at().text().substring(name.end() - showing.at().offset());
    }

    private List<Example> examples(Procedure before) {
        LinkedSteps after = new LinkedSteps(before);
        StepTimes times = new StepTimes(before.scope());
        List<Example> examples = new ArrayList<>();
        Map<String, String> around = Map.of();
        for (Example example : procedure.examples()) {
            Example changed = example(example, example.variation() ? around : Map.of(), before, after, times);
            around = example.variation() ? around : said(changed, run(changed, changed.shows(), after, times), before);
            examples.add(changed);
        }
        return List.copyOf(examples);
    }

    /** By the step, what an example shows on its path by its own words or by the fault table; its variations show the same. */
    private static Map<String, String> said(Example example, ExampleRun run, Procedure before) {
        Map<String, String> said = new HashMap<>();
        run.path().forEach(at -> {
            boolean entry = example.shows().stream().anyMatch(showing -> showing.step().text().equals(at.step()));
            if (entry || byTable(example, at.step(), before).isPresent()) {
                said.putIfAbsent(at.step(), at.outcome());
            }
        });
        return said;
    }

    private static Optional<String> byTable(Example example, String name, Procedure before) {
        return before.step(new Name(name, example.at())).flatMap(step -> example.of().flatMap(before::fault)
                .flatMap(fault -> Understood.byTable(fault, step, before)).flatMap(showing -> Results.outcome(step, showing.possible().get(0))))
                .map(Outcome::key);
    }

    /** What the example has to say at the steps of its path where its text alone, read again, would be taken to show something else. */
    private static Map<String, String> unsaid(Example example, List<Showing> shows, ExampleRun run, Map<String, String> around, Procedure before) {
        Map<String, String> unsaid = new LinkedHashMap<>();
        run.path().forEach(at -> before.step(new Name(at.step(), example.at())).filter(step -> step.outcomes().size() > 1).ifPresent(step -> {
            boolean isSaid = shows.stream().anyMatch(showing -> showing.step().text().equals(at.step()) && !showing.step().isUnderstood());
            Optional<String> taken = Optional.ofNullable(around.get(at.step())).or(() -> byTable(example, at.step(), before))
                    .or(() -> Results.normal(step, before.scope()).map(Outcome::key));
            if (!isSaid && taken.filter(at.outcome()::equals).isEmpty()) {
                unsaid.putIfAbsent(at.step(), at.step() + " " + step.outcomes().stream().filter(outcome -> outcome.key().equals(at.outcome())).findFirst()
                        .map(outcome -> ResultWords.leadingTo(step, outcome)).orElse(at.outcome()));
            }
        }));
        return unsaid;
    }

    /** Says what is asked now, as far as it is known, and no longer what is not asked any more. */
    private Example example(Example example, Map<String, String> around, Procedure before, LinkedSteps after, StepTimes times) {
        List<Showing> shows = new ArrayList<>(example.shows());
        Map<String, String> added = new LinkedHashMap<>();
        ExampleRun run = run(example, shows, after, times);
        for (int i = 0; i <= after.size() && isSilent(run); i++) {
            Step silent = run.problem().orElseThrow().step().orElseThrow();
            Optional<Showing.Possible> known = known(example, silent, before);
            if (known.isEmpty()) {
                break;
            }
            added.put(silent.name().text(), silent.name() + " " + text(known.get()));
            shows.add(new Showing(silent.name(), List.of(known.get()), example.title().at()));
            run = run(example, shows, after, times);
        }
        List<Showing> leaving = new ArrayList<>();
        while (run.problem().filter(p -> p.failure() == ExampleRun.Failure.NEVER_ASKED).isPresent()) {
            SourceRange unused = run.problem().orElseThrow().at();
            shows.stream().filter(showing -> showing.at() == unused).forEach(leaving::add);
            shows.removeIf(showing -> showing.at() == unused);
            run = run(example, shows, after, times);
        }
        example.shows().stream().filter(showing -> dropped.contains(showing.step().text())).forEach(leaving::add);
        shows.removeIf(showing -> dropped.contains(showing.step().text()));
        if (example.variation() || example.of().isPresent()) {
            unsaid(example, shows, run, around, before).forEach(added::putIfAbsent);
        }
        if (!added.isEmpty() || leaving.stream().anyMatch(showing -> !showing.step().isUnderstood())) {
            edits.addAll(ExampleEntries.rewritten(example, run.path(), added, leaving));
        }
        return new Example(example.variation(), example.title(), example.of(), shows, example.endsAt(), example.within(), example.at());
    }

    private ExampleRun run(Example example, List<Showing> shows, LinkedSteps tree, StepTimes times) {
        return new ExampleRun(tree, procedure.scope(), times,
                new Example(example.variation(), example.title(), example.of(), shows, example.endsAt(), example.within(), example.at()));
    }

    private static boolean isSilent(ExampleRun run) {
        return run.problem().filter(p -> p.failure() == ExampleRun.Failure.NOTHING_SAID).isPresent();
    }

    private static String text(Showing.Possible shown) {
        return shown.reading().isPresent() ? shown.words().text() : ResultWords.written(shown.words().text());
    }

    /** What the example, or the fault it is a case of, says of a step or of the step it is a copy of. */
    private Optional<Showing.Possible> known(Example example, Step step, Procedure before) {
        String original = copiesOf.entrySet().stream().filter(entry -> entry.getValue().stream()
                .anyMatch(copy -> copy.name().equals(step.name().text()))).map(Map.Entry::getKey).findFirst()
                .orElse(step.name().text());
        Optional<Showing.Possible> said = example.shows().stream().filter(showing -> showing.step().text().equals(original))
                .flatMap(showing -> showing.possible().stream()).findFirst();
        PresumedTable table = new PresumedTable(FaultTable.of(before));
        return said.or(() -> example.of().flatMap(before::fault).map(fault -> table.cell(fault, step)).filter(FaultSignature::isCertain)
                .map(cell -> new Showing.Possible(new Name(cell.outcomes().iterator().next(), example.title().at()),
                        Optional.empty(), Optional.empty())));
    }
}

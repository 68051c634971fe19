/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;

/**
 * Puts in what a text says once and means in many places, so that everything behind it sees a procedure in which all is said: the title and time
 * of a step that performs a routine, the needs of a step that names a set-up, the title of a conclusion or fault that is called by its name alone, the arrow to the step below ({@link RunningOn}), the arrows to the conclusion that {@code otherwise} names, and what an example has from the fault table, from
 * the example around it, or from the conclusion that it must come to. Whatever is put in has a place of no length.
 */
public final class Understood {
    /** More steps than any example takes; one that goes round for ever stops here. */
    private static final int MOST_STEPS = 10_000;

    private final Scope scope;

    private Understood(Scope scope) {
        this.scope = scope;
    }

    public static Library in(Library library) {
        return new Understood(library.scope()).library(library);
    }

    /** The procedure with its libraries, before closing steps are put in. */
    public static Procedure in(Procedure p) {
        Understood understood = new Understood(p.scope());
        Optional<Name> elsewhere = p.elsewhere().filter(name -> refers(p, name));
        List<Fault> faults = p.faults().stream().map(Understood::titled).toList();
        List<Step> steps = new ArrayList<>(RunningOn.in(p.steps().stream().map(understood::inFull).map(step -> reported(step, faults)).toList(), List.of(), p.scope(),
                        elsewhere.isPresent())
                .stream().map(step -> elsewhere.map(name -> understood.leading(step, name)).orElse(step)).toList());
        steps.addAll(conclusions(steps, faults));
        Procedure said = p.with(p.libraries().stream().map(understood::library).toList(), understood.declarations(p.own()))
                .with(faults, p.begin(), steps, p.examples());
        return p.examples().stream().anyMatch(Understood::isShort) ? said.with(faults, said.begin(), said.steps(), new CompletedExamples(said, elsewhere).all()) : said;
    }

    /** Only a conclusion that hands the unit to somebody who knows more may be meant without being named: it claims nothing of the unit. */
    public static boolean refers(Procedure procedure, Name conclusion) {
        return procedure.step(conclusion).filter(step -> step instanceof Step.Conclude conclude && conclude.refersTo().isPresent()).isPresent();
    }

    private static boolean finds(Procedure procedure, Name target, Fault fault) {
        return procedure.step(new Name(ClosingStep.written(target.text()), target.at())).filter(step -> step instanceof Step.Conclude conclude
                && conclude.finds().stream().anyMatch(name -> name.text().equals(fault.name().text()))).isPresent();
    }

    private Library library(Library library) {
        Declarations own = declarations(library.own());
        return own == library.own() ? library : new Library(library.source(), library.name(), library.title(), library.uses(), library.libraries(), own,
                library.statedRule(), library.closesBy(), library.problems(), library.at());
    }

    private Declarations declarations(Declarations own) {
        boolean plain = own.routines().stream().allMatch(routine -> {
            List<Step> steps = steps(routine);
            return IntStream.range(0, steps.size()).allMatch(i -> steps.get(i) == routine.steps().get(i));
        });
        return plain ? own : own.with(own.conditions(), own.routines().stream().map(routine -> new Routine(routine.name(), routine.title(), routine.exits(), routine.normalExit(),
                        routine.usualTime(), routine.begin(), steps(routine), routine.at())).toList());
    }

    /** The conclusions of the faults that an arrow leads to, each once. Where a step has the name of a fault, the arrow leads to the step. */
    private static List<Step> conclusions(List<Step> steps, List<Fault> faults) {
        Set<String> taken = steps.stream().map(step -> step.name().text()).collect(Collectors.toSet());
        Set<String> ledTo = new HashSet<>();
        steps.stream().flatMap(step -> step.outcomes().stream()).flatMap(outcome -> Stream.concat(outcome.target().stream(),
                outcome.repeat().map(Outcome.Repeat::otherwise).stream())).forEach(target -> ledTo.add(target.text()));
        return faults.stream().filter(fault -> !fault.name().text().isEmpty() && ledTo.contains(fault.name().text()) && taken.add(fault.name().text()))
                .map(fault -> (Step) conclusion(fault)).toList();
    }

    /** The conclusion that finds a fault and nothing else: called like it, and with its report. It stands at the end of the fault. */
    public static Step.Conclude conclusion(Fault fault) {
        SourceRange place = new SourceRange(fault.at().source(), fault.at().end(), 0);
        String title = fault.title().isBlank() ? fault.name().spoken() : fault.title();
        Written<String> report = fault.report().orElseGet(() -> new Written<>(title.strip().replaceAll("[.!?]+$", "")
                + (fault.remedies().isEmpty() ? ". Found." : ". Repaired and tried."), place));
        return new Step.Conclude(fault.name(), title, List.of(new Name(fault.name().text(), place)), Optional.empty(), Optional.empty(), Optional.of(report),
                StepFrame.PLAIN, place);
    }

    /** A conclusion that finds one fault and says no report says the one of the fault. */
    private static Step reported(Step step, List<Fault> faults) {
        if (!(step instanceof Step.Conclude conclude) || conclude.report().isPresent() || conclude.finds().size() != 1) {
            return step;
        }
        return faults.stream().filter(fault -> fault.name().text().equals(conclude.finds().get(0).text())).findFirst().filter(fault -> fault.report().isPresent())
                .<Step>map(fault -> new Step.Conclude(step.name(), step.title(), conclude.finds(), conclude.findsNothing(), conclude.refersTo(),
                        fault.report(), conclude.frame(), conclude.at())).orElse(step);
    }

    private List<Step> steps(Routine routine) {
        return RunningOn.in(routine.steps().stream().map(this::inFull).toList(), routine.exits(), scope, false);
    }

    private static Fault titled(Fault fault) {
        return isUntitled(fault.name(), fault.title()) ? new Fault(fault.name(), fault.name().spoken(), fault.cases(), fault.shows(), fault.remedies(),
                fault.hazards(), fault.report(), fault.at()) : fault;
    }

    /** Without a title; one that is there and empty is a slip that a rule tells. */
    private static boolean isUntitled(Name name, String title) {
        return title.isEmpty() && !name.text().isEmpty() && !name.at().source().content().substring(name.at().end()).stripLeading().startsWith("\"");
    }

    /**
     * A step that performs a routine says of it what the routine says itself, where it says nothing else; a conclusion without a title is called by
     * the words of its name.
     */
    private Step inFull(Step written) {
        Step step = settled(written);
        if (step instanceof Step.Conclude conclude && isUntitled(step.name(), step.title())) {
            return new Step.Conclude(step.name(), step.name().spoken(), conclude.finds(), conclude.findsNothing(), conclude.refersTo(), conclude.report(),
                    conclude.frame(), conclude.at());
        }
        Optional<Routine> routine = scope.performedBy(step);
        if (routine.isEmpty() || !(step instanceof Step.Perform perform)) {
            return step;
        }
        boolean untitled = step.title().isBlank() && !routine.get().title().isBlank();
        boolean untimed = step.frame().takes().isEmpty() && routine.get().usualTime().isPresent();
        StepFrame frame = untimed ? step.frame().taking(new Written<>(routine.get().usualTime().orElseThrow().value(), place(step))) : step.frame();
        return untitled || untimed ? new Step.Perform(step.name(), untitled ? routine.get().title() : step.title(), perform.routine(), frame,
                step.outcomes(), step.at()) : step;
    }

    /** A step that says which set-up the unit must be in needs what that set-up says, and the step does not say itself. */
    private Step settled(Step step) {
        List<Setting> needs = step.frame().needs();
        List<Setting> asked = step.frame().setUps().stream().flatMap(name -> scope.setUp(name).stream().flatMap(setUp -> setUp.neededAt(name.at()).stream()))
                .filter(setting -> needs.stream().noneMatch(setting::says)).toList();
        return asked.isEmpty() ? step : step.framed(step.frame().needing(Stream.concat(asked.stream(), step.frame().needs().stream()).toList()));
    }

    /** Before the brace that closes the step: there a line may be put in. */
    private static SourceRange place(Step step) {
        return new SourceRange(step.at().source(), Math.max(step.at().offset(), step.at().end() - 1), 0);
    }

    /**
     * The step with an arrow to the conclusion for each outcome that it can have and does not name. Where nothing is named yet, or what a sound unit
     * shows is not, the step stays as it is.
     */
    private Step leading(Step step, Name to) {
        if (step.outcomes().isEmpty() || Results.byKey(step, "anything else").isPresent()) {
            return step;
        }
        SourceRange place = place(step);
        List<Outcome> outcomes = new ArrayList<>(step.outcomes());
        Name target = new Name(to.text(), place);
        Optional<Step.Expectation> expects = step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
        if (step instanceof Step.Observe observe && observe.indicator().flatMap(scope::indicator).map(Indicator::codes).filter(codes -> !codes.isEmpty()).isPresent()) {
            outcomes.add(new Outcome(new Outcome.AnythingElse(place), Optional.of(target), Optional.empty(), List.of(), place));
        } else if (expects.isPresent() && Results.byKey(step, Step.WITHIN).isPresent()) {
            Interval good = expects.get().limit().value().interval(Results.kind(step));
            good.lower().filter(low -> Results.byKey(step, Step.BELOW).isEmpty()).ifPresent(low -> outcomes.add(0, word(Step.BELOW, target, place)));
            good.upper().filter(high -> Results.byKey(step, Step.ABOVE).isEmpty()).ifPresent(high -> outcomes.add(word(Step.ABOVE, target, place)));
        } else if (step instanceof Step.Measure measure && !measure.rows().isEmpty() && Results.byKey(step, Step.ALL_WITHIN).isPresent()
                && Results.byKey(step, Step.ANY_OUTSIDE).isEmpty() && measure.rows().stream().anyMatch(row -> Results.byKey(step, row.outside()).isEmpty())) {
            outcomes.add(word(Step.ANY_OUTSIDE, target, place));
        } else if (step instanceof Step.Perform) {
            scope.performedBy(step).filter(routine -> routine.normalExit().flatMap(exit -> Results.byKey(step, exit.text())).isPresent())
                    .ifPresent(routine -> routine.exits().stream().filter(exit -> Results.byKey(step, exit.text()).isEmpty())
                            .forEach(exit -> outcomes.add(word(exit.text(), target, place))));
        }
        return outcomes.size() == step.outcomes().size() ? step : step.renamed(step.name(), List.copyOf(outcomes));
    }

    private static Outcome word(String key, Name target, SourceRange place) {
        return new Outcome(new Outcome.Word(new Name(key, place)), Optional.of(target), Optional.empty(), List.of(), place);
    }

    private static boolean isShort(Example example) {
        return example.variation() || example.of().isPresent() || example.endsAt().isEmpty();
    }

    /** The examples of a procedure, each with all that it shows on its path and where that must end. */
    private static final class CompletedExamples {
        private final Procedure procedure;
        private final Scope scope;
        private final Optional<Name> elsewhere;

        CompletedExamples(Procedure procedure, Optional<Name> elsewhere) {
            this.procedure = procedure;
            this.scope = procedure.scope();
            this.elsewhere = elsewhere;
        }

        List<Example> all() {
            List<Example> all = new ArrayList<>();
            Optional<Example> around = Optional.empty();
            for (Example example : procedure.examples()) {
                Optional<Example> basis = example.variation() ? around : Optional.empty();
                Example whole = new Example(example.variation(), example.title(), example.of(), shows(example, basis), end(example),
                        example.within(), example.at());
                around = example.variation() ? around : Optional.of(whole);
                all.add(whole);
            }
            return List.copyOf(all);
        }

        /** As it says; else the one conclusion that finds its fault; of a case of no fault, where the procedure leads otherwise. */
        private Optional<Name> end(Example example) {
            if (example.endsAt().isPresent()) {
                return example.endsAt();
            }
            SourceRange place = place(example);
            if (example.of().isEmpty()) {
                return elsewhere.map(name -> new Name(name.text(), place));
            }
            List<Step> finding = procedure.steps().stream().filter(step -> step instanceof Step.Conclude conclude
                    && conclude.finds().stream().anyMatch(name -> name.text().equals(example.of().get().text()))).toList();
            return finding.size() == 1 ? Optional.of(new Name(finding.get(0).name().text(), place)) : Optional.empty();
        }

        private static SourceRange place(Example example) {
            return new SourceRange(example.at().source(), example.title().at().end(), 0);
        }

        /** What it says, and on its path what the example around it says, else what the fault that it is a case of shows. */
        private List<Showing> shows(Example example, Optional<Example> basis) {
            if (basis.isEmpty() && example.of().isEmpty()) {
                return example.shows();
            }
            Map<String, List<Showing>> said = byStep(example.shows(), UnaryOperator.identity());
            UnaryOperator<Showing> taken = showing -> {
                SourceRange own = place(example);
                return new Showing(new Name(showing.step().text(), own), showing.possible(), own);
            };
            Map<String, List<Showing>> around = basis.map(whole -> byStep(whole.shows(), taken)).orElseGet(Map::of);
            Optional<Fault> of = example.of().flatMap(procedure::fault);
            Map<String, Integer> used = new HashMap<>();
            List<Showing> shows = new ArrayList<>();
            Set<Object> seen = new HashSet<>();
            Optional<Position> at = Position.start(procedure, scope);
            for (int i = 0; at.isPresent() && !at.get().isEnd() && i < MOST_STEPS && seen.add(List.of(at.get(), Map.copyOf(used))); i++) {
                Step step = at.get().step();
                String name = step.name().text();
                List<Showing> entries = said.containsKey(name) ? said.get(name) : around.getOrDefault(name, List.of());
                int next = used.getOrDefault(name, 0);
                Optional<Showing> entry = next < entries.size() ? Optional.of(entries.get(next))
                        : said.containsKey(name) || around.containsKey(name) ? Optional.empty() : of.flatMap(fault -> byTable(fault, step, procedure)).map(taken);
                entry.ifPresent(shown -> {
                    used.merge(name, 1, Integer::sum);
                    shows.add(shown);
                });
                Optional<Outcome> outcome = entry.isPresent() ? entry.get().possible().stream().findFirst().flatMap(possible -> Results.outcome(step, possible))
                        : step.outcomes().size() == 1 ? Optional.of(step.outcomes().get(0)) : Results.normal(step, scope);
                Position from = at.get();
                at = outcome.flatMap(shown -> from.after(shown).to());
            }
            // what it says itself and is not asked stays, so that this is told
            example.shows().stream().filter(showing -> shows.stream().noneMatch(one -> one == showing)).toList().forEach(shows::add);
            return List.copyOf(shows);
        }

        private static Map<String, List<Showing>> byStep(List<Showing> shows, UnaryOperator<Showing> as) {
            Map<String, List<Showing>> byStep = new LinkedHashMap<>();
            shows.forEach(showing -> byStep.computeIfAbsent(showing.step().text(), step -> new ArrayList<>()).add(as.apply(showing)));
            return byStep;
        }

    }

    /**
     * What an example of the fault shows at the step without saying so: the one outcome of the table, unless a sound unit shows that too. A step that
     * verifies the repair passes: it shows the one outcome with which the fault is found.
     */
    public static Optional<Showing> byTable(Fault fault, Step step, Procedure procedure) {
        Scope scope = procedure.scope();
        if (step.outcomes().size() < 2) {
            return Optional.empty();
        }
        if (step.frame().verifies().isPresent() && Results.normal(step, scope).isEmpty()
                && fault.shows().stream().noneMatch(showing -> showing.step().text().equals(step.name().text()))) {
            List<Outcome> finding = step.outcomes().stream().filter(outcome -> outcome.target().filter(target -> finds(procedure, target, fault)).isPresent()).toList();
            return finding.size() == 1 ? Optional.of(new Showing(step.name(), List.of(new Showing.Possible(new Name(finding.get(0).key(), step.name().at()),
                    Optional.empty(), Optional.empty())), step.name().at())) : Optional.empty();
        }
        List<Showing> shown = fault.shows().stream().filter(showing -> showing.step().text().equals(step.name().text())).toList();
        Optional<String> normal = Results.normal(step, scope).map(Outcome::key);
        return shown.stream().filter(showing -> shown.size() == 1 && showing.possible().size() == 1).filter(showing -> Results.outcome(step,
                showing.possible().get(0)).map(Outcome::key).filter(key -> !Optional.of(key).equals(normal)).isPresent()).findFirst();
    }
}

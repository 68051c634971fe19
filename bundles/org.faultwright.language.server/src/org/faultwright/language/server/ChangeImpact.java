/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;

/**
 * What a change of one step reaches.
 *
 * @param step      the step
 * @param way       the shortest way from the beginning to it; empty where no way leads there
 * @param comesFrom the steps that lead to it
 * @param examples  the examples that pass through it, with whether each still ends where it should
 * @param faults    the faults whose signature says what it shows
 */
public record ChangeImpact(Step step, List<PathStep> way, List<Step> comesFrom, List<ExampleRun> examples,
        List<Fault> faults) {

    /** For the step of the procedure's own at this offset; absent elsewhere. */
    public static Optional<ChangeImpact> at(OpenText text, int offset) {
        if (!(text.document() instanceof Procedure procedure)) {
            return Optional.empty();
        }
        return procedure.stepAt(offset).map(step -> of(text, procedure, step));
    }

    private static ChangeImpact of(OpenText text, Procedure procedure, Step step) {
        synchronized (text.subject()) {
            List<PathStep> way = ProcedurePaths.of(text.subject()).flatMap(paths -> paths.pathTo(step.name()))
                    .orElseGet(List::of);
            List<ExampleRun> examples = ExampleCoverage.in(text.subject()).map(ExampleCoverage::runs)
                    .orElseGet(List::of).stream().filter(run -> passes(run, step)).toList();
            List<Fault> faults = procedure.faults().stream()
                    .filter(fault -> fault.shows().stream().map(Showing::step).anyMatch(name -> names(name, step))).toList();
            List<Step> from = procedure.writtenSteps().stream().filter(other -> leadsTo(other, step)).toList();
            return new ChangeImpact(step, way, from, examples, faults);
        }
    }

    private static boolean passes(ExampleRun run, Step step) {
        return run.path().stream().anyMatch(passed -> passed.step().equals(step.name().text()));
    }

    private static boolean leadsTo(Step from, Step to) {
        return from.outcomes().stream().flatMap(ChangeImpact::targets).anyMatch(name -> names(name, to));
    }

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream());
    }

    private static boolean names(Name name, Step step) {
        return name.text().equals(step.name().text());
    }
}

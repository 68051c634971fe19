/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A checked procedure: steps from complaints to conclusions for stated equipment. It is never changed
 * once made; whatever comes later (findings, cards, trees) is a function of it.
 *
 * @param tools  hand tools and aids to lay out before starting; instruments are found from the steps
 * @param closesBy the routine that closes the unit, where it names one itself
 * @param elsewhere the conclusion that an outcome leads to which a step does not name, where it says one
 * @param begin  where it begins; the first step when not stated
 * @param at     the whole declaration
 */
public record Procedure(SourceText source, Name name, String title, List<Name> uses, List<Library> libraries,
        Optional<Equipment> equipment, Optional<Revision> revision, List<Written<String>> complaints,
        List<Written<String>> tools, Declarations own, Optional<Written<StatedDecisionRule>> statedRule, Optional<Name> closesBy, Optional<Name> elsewhere, List<Fault> faults,
        Optional<Name> begin, List<Step> steps, List<Example> examples, List<ReadingProblem> problems, SourceRange at)
        implements Document, StepGraph {
    public Procedure {
        steps = StepsByName.of(steps);
    }

    /** The same with other libraries and declarations of its own. */
    public Procedure with(List<Library> others, Declarations declared) {
        return new Procedure(source, name, title, uses, others, equipment, revision, complaints, tools, declared, statedRule, closesBy, elsewhere, faults, begin,
                steps, examples, problems, at);
    }

    /** The same with other faults, steps and examples. */
    public Procedure with(List<Fault> otherFaults, Optional<Name> first, List<Step> otherSteps, List<Example> otherExamples) {
        return new Procedure(source, name, title, uses, libraries, equipment, revision, complaints, tools, own, statedRule, closesBy, elsewhere, otherFaults, first,
                otherSteps, otherExamples, problems, at);
    }

    /** The same with other steps. */
    public Procedure withSteps(List<Step> others) {
        return with(faults, begin, others, examples);
    }

    /** The same with other words that could not be read. */
    public Procedure withProblems(List<ReadingProblem> others) {
        return new Procedure(source, name, title, uses, libraries, equipment, revision, complaints, tools, own, statedRule, closesBy, elsewhere, faults, begin,
                steps, examples, others, at);
    }

    @Override
    public List<StepGraph> graphs() {
        List<StepGraph> graphs = new ArrayList<>();
        graphs.add(this);
        graphs.addAll(own.routines());
        return List.copyOf(graphs);
    }

    @Override
    public List<Name> exits() {
        return List.of();
    }

    /** An arrow to a name that a step has as well leads to the step. */
    @Override
    public List<Fault> leadsToFaults() {
        return faults.stream().filter(fault -> step(fault.name()).filter(step -> !step.isUnderstood()).isEmpty()).toList();
    }

    public Optional<Fault> fault(Name name) {
        return faults.stream().filter(fault -> fault.name().text().equals(name.text())).findFirst();
    }

    /** The routine that closes the unit before a conclusion: the procedure's own word, else that of the nearest library. */
    public Optional<Routine> closing() {
        return closesBy.or(() -> libraries.stream().flatMap(library -> library.closesBy().stream()).findFirst())
                .flatMap(scope()::routine);
    }

    /** The decision rule in force: the procedure's own, else that of the nearest library, else simple. */
    public StatedDecisionRule decisionRule() {
        return statedRule.or(() -> libraries.stream().flatMap(library -> library.statedRule().stream()).findFirst())
                .map(Written::value).orElseGet(StatedDecisionRule.Simple::new);
    }
}

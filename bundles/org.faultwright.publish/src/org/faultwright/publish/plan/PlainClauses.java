/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Wording;

/**
 * What a step of each kind says in lines of words, on every card alike: a key, and what is said. What more a kind has is drawn by the card itself,
 * such as boxes for a reading.
 */
public final class PlainClauses implements Step.Cases<List<PlainClauses.Clause>> {
    /** @param key one or two words before it, such as {@code Erases} */
    public record Clause(String key, String words) {
        private static List<Clause> of(String key, Optional<Written<String>> words) {
            return words.map(said -> List.of(new Clause(key, said.value()))).orElse(List.of());
        }
    }

    private final Procedure procedure;

    private PlainClauses(Procedure procedure) {
        this.procedure = procedure;
    }

    /** Those of a step, in the order in which they are read. */
    public static List<Clause> of(Step step, Procedure procedure) {
        return step.match(new PlainClauses(procedure));
    }

    @Override
    public List<Clause> check(Step.Check step) {
        return List.of();
    }

    @Override
    public List<Clause> observe(Step.Observe step) {
        return List.of();
    }

    @Override
    public List<Clause> measure(Step.Measure step) {
        return List.of();
    }

    @Override
    public List<Clause> carryOut(Step.Do step) {
        return Clause.of("Erases", step.erases());
    }

    @Override
    public List<Clause> calculate(Step.Calculate step) {
        return List.of();
    }

    @Override
    public List<Clause> perform(Step.Perform step) {
        return List.of();
    }

    @Override
    public List<Clause> conclude(Step.Conclude step) {
        List<Clause> clauses = new ArrayList<>();
        String found = step.finds().stream().map(name -> procedure.fault(name).map(Fault::title).filter(title -> !title.isBlank())
                .orElse(name.text())).collect(Collectors.joining("; "));
        if (Wording.namesFaults(step)) {
            clauses.add(new Clause(Wording.found(step), found));
        }
        step.findsNothing().ifPresent(at -> clauses.add(new Clause("Found", "no fault")));
        clauses.addAll(Clause.of("Refer to", step.refersTo()));
        return clauses;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.faults.ShowingText;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Changes to an example after which it goes as it says. Only what has been tried on paper is proposed. */
public final class ExampleRepair {
    private final ExampleCoverage coverage;
    private final ExampleRun run;
    private final Example example;

    private ExampleRepair(ExampleCoverage coverage, ExampleRun run) {
        this.coverage = coverage;
        this.run = run;
        this.example = run.example();
    }

    public static List<Fix> of(ExampleCoverage coverage, ExampleRun run) {
        ExampleRepair repair = new ExampleRepair(coverage, run);
        return run.problem().map(problem -> switch (problem.failure()) {
            case NOTHING_SAID -> repair.saying(problem.step().orElseThrow());
            case NEVER_ASKED -> repair.leavingOut(problem.at());
            case OTHER_END -> repair.endingAt(problem.step().orElseThrow());
            default -> List.<Fix>of();
        }).orElse(List.of());
    }

    private List<Fix> saying(Step step) {
        List<Fix> fixes = new ArrayList<>();
        step.outcomes().forEach(outcome -> {
            String words = ResultWords.leadingTo(step, outcome);
            Name result = new Name(outcome.key(), example.title().at());
            List<Showing> shows = new ArrayList<>(example.shows());
            shows.add(new Showing(new Name(step.name().text(), example.title().at()),
                    List.of(new Showing.Possible(result, Optional.empty(), Optional.empty())), example.title().at()));
            if (passes(shows, example.endsAt())) {
                ShowingText.adding(example, step.name() + " " + words)
                        .map(edit -> new Fix("Say \"" + step.name() + " " + words + "\"", List.of(edit))).ifPresent(fixes::add);
            }
        });
        return fixes;
    }

    private List<Fix> leavingOut(SourceRange entry) {
        List<Showing> shows = example.shows().stream().filter(showing -> showing.at() != entry).toList();
        return passes(shows, example.endsAt())
                ? List.of(new Fix("Leave out \"" + entry.text() + "\"", ShowingText.without(example, showing -> showing.at() == entry)))
                : List.of();
    }

    private List<Fix> endingAt(Step end) {
        Name said = example.endsAt().orElseThrow();
        return !said.isUnderstood() && passes(example.shows(), Optional.of(new Name(end.name().text(), said.at())))
                ? List.of(Fix.replacing("End at " + end.name(), said.at(), end.name().text())) : List.of();
    }

    private boolean passes(List<Showing> shows, Optional<Name> endsAt) {
        return coverage.run(new Example(example.variation(), example.title(), example.of(), shows, endsAt, example.within(), example.at()))
                .passes();
    }
}

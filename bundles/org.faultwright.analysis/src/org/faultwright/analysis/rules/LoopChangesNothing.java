/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Cycle;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** A loop, not held by any bound, in which nothing is done. */
public final class LoopChangesNothing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("loop-changes-nothing", Severity.ADVICE, Group.PATHS,
            "A loop without a bound comes round again with nothing done or changed in it.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Set<String> reported = new HashSet<>();
            for (Cycle cycle : Cycle.among(paths.map(), LoopChangesNothing::changesNothing)) {
                InlinedStep first = cycle.places().get(0);
                if (paths.reaches(first) && reported.add(first.outermost().label() + " " + first.step().name())) {
                    report(paths.map().procedure(), cycle, findings);
                }
            }
        });
    }

    private static boolean changesNothing(Transition way) {
        return !way.isBounded() && !(way.from().step() instanceof Step.Do) && way.from().sets().isEmpty()
                && way.outcome().map(outcome -> outcome.proves().isEmpty()).orElse(true);
    }

    private static void report(Procedure procedure, Cycle cycle, Findings findings) {
        InlinedStep first = cycle.places().get(0);
        List<PathStep> round = new ArrayList<>();
        cycle.ways().forEach(way -> way.taken().ifPresent(round::add));
        round.add(first.here());
        findings.report(PlaceText.at(first),
                PlaceText.subject(first) + " comes round again, and nothing is done in between.",
                "The same outcomes would only come again: do something in the loop, or bound it with \"at most 2 times, else …\".",
                round, fixes(procedure, cycle));
    }

    /** Bounds the way back, where there is a conclusion to lead to instead. */
    private static Fix[] fixes(Procedure procedure, Cycle cycle) {
        Transition last = cycle.ways().get(cycle.ways().size() - 1);
        Optional<Name> otherwise = procedure.steps().stream().filter(step -> step instanceof Step.Conclude conclude
                && (conclude.refersTo().isPresent() || conclude.findsNothing().isPresent())).map(Step::name).findFirst();
        return last.from().caller().isPresent() || otherwise.isEmpty() ? new Fix[0]
                : last.outcome().flatMap(Outcome::target).map(target -> new Fix[] {Fix.replacing(
                        "Come round at most 2 times, then go to " + otherwise.get(),
                        new SourceRange(target.at().source(), target.at().end(), 0),
                        " at most 2 times, else " + otherwise.get())}).orElseGet(() -> new Fix[0]);
    }
}

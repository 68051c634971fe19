/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;

/** A repair that a conclusion about a fault follows without anyone having verified it. */
public final class RepairNotVerified implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("repair-not-verified", Severity.ERROR, Group.PATHS,
            "After a step that repairs, a fault is concluded on without a step that verifies the repair.");

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
            Repairs repairs = new Repairs(paths.map().procedure());
            Set<InlinedStep> verifying = paths.map().places().stream().filter(InlinedStep::verifiesRepair).filter(RepairNotVerified::canFail)
                    .filter(OutcomeEffects.inVain(paths).negate()).collect(Collectors.toSet());
            Set<InlinedStep> unsure = paths.routes().before(Repairs::findsFault, place -> verifying.contains(place) && !(place.step() instanceof Step.Calculate));
            paths.map().places().stream().filter(paths::reaches)
                    .filter(repairs::isRepair)
                    // there are few of them; to look for a path from each repair would take far longer
                    .filter(unsure::contains)
                    .filter(place -> !reported.contains(place.outermost().label()))
                    .forEach(place -> unverified(paths, place, verifying(paths, place, verifying)).ifPresent(path -> {
                        reported.add(place.outermost().label());
                        report(paths, place, path, verifying, findings);
                    }));
        });
    }

    /** What is only done, or only written down, shows no repair to have failed. */
    private static boolean canFail(InlinedStep place) {
        return !(place.step() instanceof Step.Do) && !(place.step() instanceof Step.Measure measure && measure.outcomes().size() == 1);
    }

    /** A value that is computed from readings taken before the repair says nothing of it. */
    private static Predicate<InlinedStep> verifying(ProcedurePaths paths, InlinedStep repair, Set<InlinedStep> verifying) {
        Set<InlinedStep> stale = verifying.stream().filter(place -> place.step() instanceof Step.Calculate)
                .filter(place -> paths.routes().after(one -> one == repair, ReadingNotTaken.takesAny(place)).has(place)).collect(Collectors.toSet());
        return place -> verifying.contains(place) && !stale.contains(place);
    }

    /** A shortest path past the repair to a conclusion that finds a fault, verified by nothing. */
    private static Optional<List<PathStep>> unverified(ProcedurePaths paths, InlinedStep repair, Predicate<InlinedStep> verifies) {
        Routes.Reach after = paths.routes().after(place -> place == repair, verifies);
        return paths.map().places().stream().filter(Repairs::findsFault).filter(after::has)
                .map(place -> after.path(place).orElseThrow())
                .min((a, b) -> Integer.compare(a.size(), b.size()));
    }

    private static void report(ProcedurePaths paths, InlinedStep repair, List<PathStep> path, Set<InlinedStep> verifying, Findings findings) {
        findings.report(PlaceText.at(repair), "After " + repair.label() + " a path comes to "
                + path.get(path.size() - 1).step() + " without a step that verifies the repair.",
                "Try the unit after the repair: say \"verifies repair\" at a step that would show it had failed.", path,
                fixes(paths, repair, path, verifying));
    }

    /** A step behind the repair on this path that would do: with it no path stays unverified. */
    private static Fix[] fixes(ProcedurePaths paths, InlinedStep repair, List<PathStep> path, Set<InlinedStep> verifying) {
        return path.stream().flatMap(step -> paths.map().place(new Name(step.step(), step.at())).stream())
                .filter(place -> observes(place.step()) && unverified(paths, repair, verifying(paths, repair, verifying).or(other -> other == place)).isEmpty())
                .findFirst().map(place -> new Fix[] {FrameLine.added("Let " + place.label() + " verify the repair",
                        place.step(), "verifies repair")}).orElseGet(() -> new Fix[0]);
    }

    private static boolean observes(Step step) {
        return step.answer().isFromTheUnit() && !OutcomeEffects.areInVain(step) && !(step instanceof Step.Measure && step.outcomes().size() == 1);
    }
}

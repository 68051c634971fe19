/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.procedure.Step;

/** A formula that computes with a reading which a path has gone past. */
public final class ReadingNotTaken implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("reading-not-taken", Severity.ERROR, Group.PATHS,
            "A path comes to a formula without the reading that it computes with.");

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
            paths.map().places().stream().filter(place -> place.step() instanceof Step.Calculate).forEach(place ->
                    FormulaWords.leaves((Step.Calculate) place.step()).stream().filter(FormulaWords.Leaf::isReading)
                            .filter(leaf -> isAStep(leaf, place, paths) && reported.add(leaf.at() + " " + leaf.text()))
                            .forEach(leaf -> check(paths, place, leaf, findings)));
        });
    }

    /** Whether the reading is a step beside the formula; an unknown name is reported by another rule. */
    private static boolean isAStep(FormulaWords.Leaf leaf, InlinedStep place, ProcedurePaths paths) {
        return paths.map().named(leaf.text()).stream().anyMatch(takes(leaf, place));
    }

    private static Predicate<InlinedStep> takes(FormulaWords.Leaf leaf, InlinedStep place) {
        return other -> other.step().name().text().equals(leaf.text()) && other.caller().equals(place.caller());
    }

    /** The steps whose readings a formula computes with. */
    static Predicate<InlinedStep> takesAny(InlinedStep place) {
        Set<String> readings = FormulaWords.leaves((Step.Calculate) place.step()).stream().filter(FormulaWords.Leaf::isReading).map(FormulaWords.Leaf::text)
                .collect(Collectors.toSet());
        return other -> readings.contains(other.step().name().text()) && other.caller().equals(place.caller());
    }

    private static void check(ProcedurePaths paths, InlinedStep place, FormulaWords.Leaf leaf, Findings findings) {
        Routes.Reach past = paths.routes().upTo(place::equals, takes(leaf, place));
        if (past.has(place)) {
            findings.report(PlaceText.at(place, leaf.at()), "A path comes to " + place.label() + " without the reading of " + leaf.text() + ".",
                    "Lead every path through " + leaf.text() + " first, or let that path go on elsewhere.",
                    past.path(place).orElseThrow());
        }
    }
}

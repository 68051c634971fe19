/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** Data that no question before speaks of, where one speaks by name of what another step erases. It reads titles: its reach is the widest. */
public final class QuestionAboutOtherData implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("question-about-other-data", Severity.WARNING, Group.SAFETY,
            "A step erases data, and the question before it asks by name about what another step erases.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> {
            List<InlinedStep> wiping = paths.map().places().stream().filter(place -> erased(place).isPresent()).filter(paths::reaches).toList();
            if (wiping.stream().map(place -> erased(place).orElseThrow().value()).distinct().count() < 2) {
                return;
            }
            List<InlinedStep> questions = paths.map().places().stream().filter(place -> EraseWithoutBackupCheck.asksAboutData(paths.map(), place))
                    .filter(paths::reaches).toList();
            Set<String> reported = new HashSet<>();
            wiping.forEach(place -> check(paths, place, wiping, questions, findings, reported));
        });
    }

    private static void check(ProcedurePaths paths, InlinedStep place, List<InlinedStep> wiping, List<InlinedStep> questions, Findings findings, Set<String> reported) {
        Written<String> erased = erased(place).orElseThrow();
        List<InlinedStep> before = questions.stream().filter(question -> paths.routes().placesAfter(question, way -> true, one -> false).contains(place)).toList();
        if (before.stream().anyMatch(question -> DataNames.of(question, paths.map().scope()).mayMean(erased.value()))) {
            return;
        }
        before.stream().flatMap(question -> wiping.stream().map(other -> erased(other).orElseThrow().value())
                .filter(DataNames.of(question, paths.map().scope())::names).map(other -> question.label() + " asks about \"" + other + "\"")).findFirst()
                .filter(asked -> reported.add(place.outermost().label() + " " + place.step().name()))
                .ifPresent(asked -> findings.report(PlaceText.at(place, erased.at()), asked + ", and " + place.label() + " erases \"" + erased.value()
                        + "\" too, of which no question speaks.", "Name both in the question, or ask about each before it is erased.",
                        paths.routes().without(one -> false).path(place).orElse(List.of())));
    }

    private static Optional<Written<String>> erased(InlinedStep place) {
        return place.isStep() && place.step() instanceof Step.Do task ? task.erases() : Optional.empty();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.SourceRange;

/** A charge that stays absent when the supply is switched on: then an old proof would count for a new charge. */
public final class ChargeNeverReturns implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("charge-never-returns", Severity.WARNING, Group.STATE,
            "The supply is switched on, and a charge still counts as absent: nothing brings it back.");

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
        ProcedurePaths.of(subject).ifPresent(paths -> paths.bench().charged().stream()
                .filter(condition -> !comesWithSupply(condition, paths)).forEach(condition ->
                        paths.bench().all().filter(state -> !state.isCharged(condition))
                                .filter(state -> paths.bench().live().stream().anyMatch(state::isLive)).findFirst()
                                .ifPresent(state -> report(paths, condition, state, findings))));
    }

    /** Whether it says which supply brings it; another supply then says nothing of it. */
    private static boolean comesWithSupply(Condition condition, ProcedurePaths paths) {
        return condition.becomes().stream().filter(becomes -> LiveMeasurement.isAmong(condition.charged(), becomes.value()))
                .anyMatch(becomes -> paths.map().scope().condition(becomes.when().condition())
                        .filter(supply -> LiveMeasurement.isAmong(supply.live(), becomes.when().value())).isPresent());
    }

    private static void report(ProcedurePaths paths, Condition condition, BenchStates.State state, Findings findings) {
        Condition supply = paths.bench().live().stream().filter(state::isLive).findFirst().orElseThrow();
        String line = "becomes " + condition.charged().get(0) + " when " + supply.name() + " " + state.value(supply);
        findings.report(PlaceText.at(state.place()), PlaceText.subject(state.place()) + " is reached with " + supply.name() + " "
                + state.value(supply) + ", and " + condition.name() + " still counts as " + state.value(condition) + ".",
                "Say at " + condition.name() + " that it \"" + line + "\": charge returns with the supply.", state.path(),
                fix(paths, condition, line).stream().toArray(Fix[]::new));
    }

    private static Optional<Fix> fix(ProcedurePaths paths, Condition condition, String line) {
        return paths.map().procedure().own().conditions().contains(condition)
                ? Optional.of(Fix.replacing("Let " + condition.name() + " return with the supply",
                        new SourceRange(condition.at().source(), condition.at().end(), 0), " " + line)) : Optional.empty();
    }
}

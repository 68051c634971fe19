/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/** A charge called absent by something that is no reading of dc voltage. */
public final class ProofNotMeasured implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("proof-not-measured", Severity.ERROR, Group.STATE,
            "A charge is called absent by something other than a reading of dc voltage, or a supply called off by a lamp.");

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
        ChargeProofs.of(subject).forEach(claim -> check(claim, subject, findings));
        for (Step step : DocumentSteps.of(subject)) {
            step.frame().sets().forEach(setting -> ChargeProofs.claimed(setting, subject).ifPresent(condition ->
                    findings.report(setting.at(), step.name() + " sets " + Contradictions.spoken(setting)
                            + " without a reading.", advice(condition))));
        }
        DocumentSteps.of(subject, Step.Observe.class).forEach(step -> step.outcomes().stream().flatMap(outcome -> outcome.proves().stream())
                .forEach(setting -> subject.scope().condition(setting.condition()).filter(condition -> !condition.live().isEmpty()
                        && condition.has(setting.value()) && !LiveMeasurement.isAmong(condition.live(), setting.value())).ifPresent(condition ->
                                findings.report(setting.at(), step.name() + " proves " + Contradictions.spoken(setting)
                                        + " by what is seen; a lamp that is dark may be broken.",
                                        "Let a step switch it off, pull the plug and set " + Contradictions.spoken(setting) + ", or measure the voltage."))));
        subject.document().own().conditions().stream().filter(condition -> !condition.charged().isEmpty())
                .forEach(condition -> declared(condition, findings));
    }

    private static void check(ChargeProofs.Claim claim, Subject subject, Findings findings) {
        Optional<QuantityKind> kind = claim.step() instanceof Step.Measure measure ? measure.kind().map(read -> read.value())
                : Optional.empty();
        boolean broken = claim.step() instanceof Step.Measure measure && measure.kind().isEmpty();
        if (broken || kind.filter(read -> read == QuantityKind.DC_VOLTAGE).isPresent()
                || claim.step() instanceof Step.Perform perform && isProvedInside(perform, claim, subject)) {
            return;
        }
        String said = claim.step().name() + " proves " + Contradictions.spoken(claim.setting());
        findings.report(claim.setting().at(), kind.map(read -> said + " by reading " + read.words()
                + "; a stored charge is a dc voltage.").orElse(said + " and measures nothing."), advice(claim.condition()));
    }

    /** Whether the charge is absent on every path by which the routine comes back with this result. */
    private static boolean isProvedInside(Step.Perform step, ChargeProofs.Claim claim, Subject subject) {
        return ProcedurePaths.of(subject).map(paths -> paths.map().places().stream()
                .filter(place -> place.step() == step && place.exit().isPresent())
                .filter(place -> Results.byKey(step, place.exit().get().text()).filter(one -> one == claim.outcome()).isPresent())
                .flatMap(place -> paths.bench().at(place).stream()).noneMatch(state -> state.isCharged(claim.condition())))
                .orElse(true);
    }

    private static void declared(Condition condition, Findings findings) {
        condition.becomes().stream().filter(becomes -> ChargeProofs.isAbsence(condition,
                new Setting(condition.name(), becomes.value(), becomes.at()))).forEach(becomes -> findings.report(becomes.at(),
                        condition.name() + " becomes " + becomes.value() + " without a reading.",
                        "Take it out. What is cut off from the charge is said at the point or part: isolated when "
                                + Contradictions.spoken(becomes.when()) + "."));
        Optional<Name> start = condition.starts().or(() -> condition.values().stream().findFirst());
        start.filter(value -> condition.has(value) && !LiveMeasurement.isAmong(condition.charged(), value))
                .ifPresent(value -> findings.report(Severity.WARNING, condition.starts().orElse(condition.name()).at(),
                        condition.name() + " starts " + value + ", and nobody has measured it.",
                        "Let it start " + condition.charged().get(0) + ": nobody knows when the unit was last plugged in."));
    }

    private static String advice(Condition condition) {
        return "Measure dc voltage " + condition.proved().map(proof -> "at " + Listing.or(proof.points().stream()
                .map(Name::text).toList())).orElse("at the point that carries the charge")
                + ", and let the outcome that shows it gone prove it.";
    }
}

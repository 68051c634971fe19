/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Proof;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/** A charge called absent by a reading that may be too high, or that the range cannot show. */
public final class ProofBandOpen implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("proof-band-open", Severity.ERROR, Group.STATE,
            "A charge is called absent by readings that go above what counts as none.");
    private static final Exact STANDARD = VoltageLimit.ENERGY_CLASS_1.volts(QuantityKind.DC_VOLTAGE).orElseThrow();

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
        subject.document().own().conditions().forEach(condition -> condition.proved().flatMap(Proof::limit)
                .ifPresent(limit -> declared(condition, limit, findings)));
        for (ChargeProofs.Claim claim : ChargeProofs.of(subject)) {
            if (claim.step() instanceof Step.Measure measure
                    && measure.kind().filter(kind -> kind.value() == QuantityKind.DC_VOLTAGE).isPresent()) {
                check(claim, measure, subject, findings);
            }
        }
    }

    private static void declared(Condition condition, Written<Limit> limit, Findings findings) {
        Optional<Exact> most = top(limit.value());
        if (limit.value().fits(QuantityKind.DC_VOLTAGE) && !most.filter(volts -> volts.compareTo(STANDARD) <= 0).isPresent()) {
            findings.report(limit.at(), condition.name() + " counts as absent " + most.map(volts -> "up to " + volts
                    + " V").orElse("whatever is read") + "; " + standard() + ".",
                    "Ask for at most 60 V, or for less where the house does.");
        }
    }

    private static String standard() {
        return "touching is taken as safe up to " + STANDARD + " V dc only (" + VoltageLimit.ENERGY_CLASS_1.source() + ")";
    }

    private static void check(ChargeProofs.Claim claim, Step.Measure step, Subject subject, Findings findings) {
        String says = "The outcome \"" + claim.outcome().key() + "\" of " + step.name() + " proves " + Contradictions.spoken(claim.setting());
        Optional<Interval> band = band(claim.outcome(), step);
        Optional<Exact> top = band.flatMap(Interval::upper).map(Bound::value);
        Exact most = most(claim.condition());
        if (top.isEmpty()) {
            if (band.isPresent() || !isBroken(claim.outcome(), step)) {
                findings.report(claim.setting().at(), says + ", whatever high voltage is read.",
                        "Let the band of low readings prove it: at most " + most + " V.");
            }
        } else if (top.get().compareTo(most) > 0) {
            findings.report(claim.setting().at(), says + " up to " + top.get() + " V; " + (most.compareTo(STANDARD) < 0
                    ? "the house counts at most " + most + " V as none" : standard()) + ".",
                    "Let a band that ends at " + most + " V or below prove it.");
        } else if (isDeep(band.get(), most)) {
            findings.report(claim.setting().at(), says + " down to " + band.get().lower().orElseThrow().value()
                    + " V; with the leads the other way round that is as much.", "Let the band begin at -" + most + " V or above.");
        } else {
            coarse(step, top.get(), says, claim, subject, findings);
        }
    }

    /** Whether it says how far it goes below zero, and that is too far. A band without a lower end is read without its sign. */
    private static boolean isDeep(Interval band, Exact most) {
        return band.lower().filter(lower -> lower.value().signum() < 0 && lower.value().absolute().compareTo(most) > 0).isPresent();
    }

    /** A display whose last digit is larger than the limit shows 0 for what is not. */
    private static void coarse(Step.Measure step, Exact top, String says, ChargeProofs.Claim claim, Subject subject,
            Findings findings) {
        LimitStudies.of(subject).stream().filter(study -> study.step() == step).map(LimitStudy::range).findFirst()
                .filter(range -> range.resolution().fits(QuantityKind.DC_VOLTAGE))
                .filter(range -> range.resolution().base().compareTo(top) > 0)
                .ifPresent(range -> findings.report(claim.setting().at(), says + " up to " + top
                        + " V, and the range in use shows steps of " + range.resolution() + ".",
                        "Use a range that can show it."));
    }

    static Exact most(Condition condition) {
        return condition.proved().flatMap(Proof::limit).flatMap(limit -> limit.value().fits(QuantityKind.DC_VOLTAGE)
                ? top(limit.value()) : Optional.empty()).filter(volts -> volts.compareTo(STANDARD) < 0).orElse(STANDARD);
    }

    private static Optional<Exact> top(Limit limit) {
        Interval interval = limit.interval();
        return interval.isEmpty() ? Optional.empty() : interval.upper().map(Bound::value);
    }

    /** The readings that give this result; absent where it is no band. */
    static Optional<Interval> band(Outcome outcome, Step.Measure step) {
        if (outcome.head() instanceof Outcome.Band band) {
            return volts(band.limit().value());
        }
        if (!step.rows().isEmpty()) {
            return outcome.key().equals(Step.ALL_WITHIN) ? widest(step) : Optional.empty();
        }
        Optional<Interval> expected = step.expects().flatMap(expects -> volts(expects.limit().value()));
        String key = outcome.key();
        if (key.equals(Step.WITHIN)) {
            return expected;
        }
        return key.equals(Step.BELOW) ? expected.flatMap(Interval::lower).map(Interval::below) : Optional.empty();
    }

    /** Of a table the limit that lets the most pass. */
    private static Optional<Interval> widest(Step.Measure step) {
        List<Interval> limits = step.rows().stream().flatMap(row -> volts(row.limit().value()).stream()).toList();
        return limits.stream().filter(limit -> limit.upper().isEmpty()).findFirst().or(() -> limits.stream()
                .max(java.util.Comparator.comparing(limit -> limit.upper().orElseThrow().value())));
    }

    private static Optional<Interval> volts(Limit limit) {
        return limit.fits(QuantityKind.DC_VOLTAGE) ? Optional.of(limit.interval()) : Optional.empty();
    }

    /** Where the limit itself cannot be read, that is said elsewhere. */
    private static boolean isBroken(Outcome outcome, Step.Measure step) {
        List<Limit> limits = outcome.head() instanceof Outcome.Band band ? List.of(band.limit().value())
                : step.expects().map(expects -> List.of(expects.limit().value())).orElse(List.of());
        return limits.stream().anyMatch(limit -> !limit.fits(QuantityKind.DC_VOLTAGE));
    }
}

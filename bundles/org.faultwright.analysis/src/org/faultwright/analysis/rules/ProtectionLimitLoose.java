/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/** A protective test of another kind than it should be, or with a limit that lets through what EN 50678 does not. */
public final class ProtectionLimitLoose implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("protection-limit-loose", Severity.WARNING, Group.SAFETY,
            "A protective test reads the wrong quantity, or its limit lets through more than EN 50678 does.");
    /** EN 50678:2020, from memory: 0.3 ohm to 5 m of lead, 0.1 ohm more for each further 7.5 m, at most 1 ohm. */
    private static final Exact MOST_CONDUCTOR = Exact.of(1);
    /** From memory: 1 Mohm in class I, and 0.3 Mohm there with heating elements, which the text does not tell apart; in ohm. */
    private static final Exact LEAST_CLASS_I = Exact.of(300_000);
    private static final Exact LEAST_CLASS_II = Exact.of(2_000_000);
    private static final Exact LEAST_CLASS_III = Exact.of(250_000);
    /** From memory, in ampere: protective conductor current in class I, touch current in class II. */
    private static final Exact MOST_CLASS_I = Exact.of("0.0035");
    private static final Exact MOST_TOUCH = Exact.of("0.0005");

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
        Optional<ProtectionClass> protection = subject.procedure().flatMap(ProtectionNotTested::protection);
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.frame().precautions().tests()
                .forEach(test -> check(step, test, protection, findings)));
        protection.ifPresent(known -> ProcedurePaths.of(subject).ifPresent(paths -> shared(paths, protection, findings)));
    }

    /** Tests of a library are written for one class, and performed for a unit of another. */
    private static void shared(ProcedurePaths paths, Optional<ProtectionClass> protection, Findings findings) {
        Set<String> told = new HashSet<>();
        String text = paths.map().procedure().source().name();
        paths.map().places().stream().filter(place -> paths.reaches(place) && place.isStep() && !place.step().at().source().name().equals(text)
                && place.step() instanceof Step.Measure).forEach(place -> place.step().frame().precautions().tests().stream()
                        .filter(test -> isLoose((Step.Measure) place.step(), test.value(), protection))
                        .filter(test -> !isLoose((Step.Measure) place.step(), test.value(), Optional.empty()))
                        .filter(test -> told.add(place.outermost().label()))
                        .forEach(test -> findings.report(PlaceText.at(place), PlaceText.subject(place) + " has no limit as strict as EN 50678 asks for "
                                + test.value().spoken() + " of a unit of class " + protection.orElseThrow() + ": " + asked(test.value(), protection) + ".",
                                "Perform the tests that are made for this class.")));
    }

    private static boolean isLoose(Step.Measure step, ProtectiveTest test, Optional<ProtectionClass> protection) {
        return step.kind().filter(kind -> kind.value() == wanted(test)).isPresent() && written(step).allMatch(limit -> limit.fits(wanted(test)))
                && limits(step).stream().noneMatch(limit -> isStrict(limit, test, protection));
    }

    private static void check(Step.Measure step, Written<ProtectiveTest> test, Optional<ProtectionClass> protection, Findings findings) {
        QuantityKind wanted = wanted(test.value());
        Optional<QuantityKind> kind = step.kind().map(Written::value);
        if (kind.isEmpty()) {
            return;
        }
        if (kind.get() != wanted) {
            findings.report(test.at(), step.name() + " reads " + kind.get().words() + "; " + test.value().spoken()
                    + " is tested by " + wanted.words() + ".", "Read " + wanted.words() + ", or leave out that it is this test.");
        } else if (written(step).allMatch(limit -> limit.fits(wanted)) && limits(step).stream().noneMatch(limit -> isStrict(limit, test.value(), protection))) {
            findings.report(test.at(), "No limit of " + step.name() + " is as strict as EN 50678 asks for " + test.value().spoken() + ": "
                    + asked(test.value(), protection) + ".", "Let the reading that passes keep to it, or to what the maker asks where that is less.");
        }
    }

    /** What a test reads. */
    static QuantityKind wanted(ProtectiveTest test) {
        return test == ProtectiveTest.LEAKAGE ? QuantityKind.AC_CURRENT_RMS : QuantityKind.RESISTANCE;
    }

    /** As they stand; one whose unit is missing or of another quantity is told by rules of its own. */
    private static Stream<Limit> written(Step.Measure step) {
        return Stream.concat(step.expects().map(expects -> expects.limit().value()).stream(), step.outcomes().stream()
                .map(Outcome::head).filter(Outcome.Band.class::isInstance).map(head -> ((Outcome.Band) head).limit().value()));
    }

    private static List<Interval> limits(Step.Measure step) {
        return written(step).map(Limit::interval).toList();
    }

    static boolean isStrict(Interval limit, ProtectiveTest test, Optional<ProtectionClass> protection) {
        return switch (test) {
            case CONDUCTOR -> isAtMost(limit, MOST_CONDUCTOR);
            case INSULATION -> limit.lower().map(Bound::value).filter(low -> low.compareTo(least(protection)) >= 0).isPresent();
            case LEAKAGE -> isAtMost(limit, most(protection));
        };
    }

    private static boolean isAtMost(Interval limit, Exact most) {
        return limit.upper().map(Bound::value).filter(high -> high.compareTo(most) <= 0).isPresent();
    }

    private static Exact least(Optional<ProtectionClass> protection) {
        return protection.map(known -> switch (known) {
            case I -> LEAST_CLASS_I;
            case II -> LEAST_CLASS_II;
            case III -> LEAST_CLASS_III;
        }).orElse(LEAST_CLASS_III);
    }

    private static Exact most(Optional<ProtectionClass> protection) {
        return protection.filter(known -> known != ProtectionClass.I).isPresent() ? MOST_TOUCH : MOST_CLASS_I;
    }

    private static String asked(ProtectiveTest test, Optional<ProtectionClass> protection) {
        return switch (test) {
            case CONDUCTOR -> "at most 0.3 ohm to 5 m of lead, 1 ohm at most";
            case INSULATION -> "at least " + (protection.filter(known -> known == ProtectionClass.II).isPresent() ? "2 Mohm in class II"
                    : protection.filter(known -> known == ProtectionClass.I).isPresent()
                            ? "1 Mohm in class I, 0.3 Mohm with heating elements" : "0.25 Mohm in any class");
            case LEAKAGE -> most(protection).compareTo(MOST_TOUCH) == 0 ? "at most 0.5 mA of touch current"
                    : "at most 3.5 mA in the protective conductor";
        };
    }
}

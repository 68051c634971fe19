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
import java.util.stream.Stream;
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
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;

/** A protective test whose failing outcome comes to a conclusion by which the unit is handed back: the one a passing outcome comes to, or any where none does. */
public final class FailedTestPassed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("failed-test-passed", Severity.ERROR, Group.SAFETY,
            "A unit that fails a protective test is handed back like one that passes, or switched on again unrepaired.");

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
            paths.map().places().stream().filter(place -> paths.reaches(place) && place.isStep()).forEach(place ->
                    place.step().frame().precautions().tests().forEach(test -> check(paths, place, test.value(), findings, reported)));
        });
    }

    private static void check(ProcedurePaths paths, InlinedStep place, ProtectiveTest test, Findings findings, Set<String> reported) {
        Optional<ProtectionClass> protection = ProtectionNotTested.protection(paths.map().procedure());
        Predicate<Outcome> passes = outcome -> passes(place.step(), outcome, test, protection);
        if (place.step().outcomes().stream().noneMatch(passes)) {
            return;
        }
        Routes.Reach passed = taking(paths, place, passes, other -> false);
        List<InlinedStep> ends = paths.map().places().stream().filter(end -> isHandedBack(paths.map().procedure(), end)).toList();
        // after a repair it must be made again; a repair alone makes nothing good
        Predicate<InlinedStep> testedAgain = other -> other.isStep() && ProtectionNotTested.tests(other.step(), test);
        for (Outcome outcome : place.step().outcomes()) {
            if (!passes.test(outcome)) {
                Routes.Reach failed = taking(paths, place, outcome::equals, testedAgain);
                ends.stream().filter(end -> failed.has(end) && (passed.has(end) || ends.stream().noneMatch(passed::has))).findFirst()
                        .filter(end -> reported.add(place.outermost().label() + " " + place.step().name() + " " + outcome.key()))
                        .ifPresent(end -> findings.report(PlaceText.at(place, outcome.head().at()), PlaceText.subject(place) + " tests "
                                + test.spoken() + ", and a path from \"" + outcome.key() + "\", which fails, hands the unit back by \"" + end.label() + "\".",
                                "Let it lead to a repair after which the test is made again, or to a conclusion that refers the unit to someone.",
                                failed.path(end).orElseThrow()));
                switchedOn(paths, place, outcome, test, findings, reported);
            }
        }
    }

    /** A unit that fails and is switched on again, unrepaired, for anything but the next test. */
    private static void switchedOn(ProcedurePaths paths, InlinedStep place, Outcome outcome, ProtectiveTest test, Findings findings, Set<String> reported) {
        Repairs repairs = new Repairs(paths.map().procedure());
        Routes.Reach failed = taking(paths, place, outcome::equals, other -> repairs.isRepair(other)
                || other.isStep() && !other.step().frame().precautions().tests().isEmpty());
        paths.map().places().stream().filter(failed::has).filter(other -> switchesOn(paths, other) && paths.map().ways(other).stream()
                .flatMap(way -> way.to().stream()).noneMatch(next -> next.isStep() && !next.step().frame().precautions().tests().isEmpty())).findFirst()
                .filter(other -> reported.add("on " + place.outermost().label() + " " + place.step().name() + " " + outcome.key()))
                .ifPresent(other -> findings.report(PlaceText.at(place, outcome.head().at()), PlaceText.subject(place) + " tests " + test.spoken()
                        + ", and a path from \"" + outcome.key() + "\", which fails, switches the unit on again at " + other.label() + ".",
                        "Tag it and refer it to someone, or repair it first: whoever touches it then may touch the mains.", failed.path(other).orElseThrow()));
    }

    private static boolean switchesOn(ProcedurePaths paths, InlinedStep place) {
        return place.sets().stream().anyMatch(setting -> paths.bench().live().stream().anyMatch(condition ->
                condition.name().text().equals(setting.condition().text()) && LiveMeasurement.isAmong(condition.live(), setting.value())));
    }

    private static Routes.Reach taking(ProcedurePaths paths, InlinedStep place, Predicate<Outcome> outcome, Predicate<InlinedStep> closed) {
        return paths.routes().afterTaking(way -> way.from() == place && way.outcome().filter(outcome).isPresent(), closed);
    }

    /** What finds a fault that has a remedy, or none, and refers to nobody; a unit beyond repair is not handed back. */
    private static boolean isHandedBack(Procedure procedure, InlinedStep end) {
        return end.step() instanceof Step.Conclude conclude && conclude.refersTo().isEmpty() && (conclude.finds().isEmpty() || conclude.finds().stream()
                .flatMap(name -> procedure.fault(name).stream()).map(Fault::remedies).anyMatch(remedies -> !remedies.isEmpty()));
    }

    /** Whether every reading with this outcome keeps what is asked for. Where one passes so, whatever else is seen fails. */
    private static boolean passes(Step step, Outcome outcome, ProtectiveTest test, Optional<ProtectionClass> protection) {
        if (!(step instanceof Step.Measure measure)) {
            return false;
        }
        if (!measure.rows().isEmpty()) {
            return outcome.key().equals(Step.ALL_WITHIN) && measure.readings().stream().allMatch(row -> isStrict(row, expected(row), test, protection));
        }
        return isStrict(measure, readings(measure, outcome), test, protection);
    }

    private static boolean isStrict(Step.Measure reading, List<Interval> values, ProtectiveTest test, Optional<ProtectionClass> protection) {
        return !values.isEmpty() && reading.kind().filter(kind -> kind.value() == ProtectionLimitLoose.wanted(test)).isPresent()
                && values.stream().allMatch(some -> ProtectionLimitLoose.isStrict(some, test, protection));
    }

    private static List<Interval> expected(Step.Measure step) {
        return step.expects().stream().flatMap(expects -> of(step, expects.limit())).toList();
    }

    private static List<Interval> readings(Step.Measure step, Outcome outcome) {
        if (outcome.head() instanceof Outcome.Band band) {
            return of(step, band.limit()).toList();
        }
        List<Interval> expected = expected(step);
        Stream<Interval> below = expected.stream().flatMap(limit -> limit.lower().stream()).map(Interval::below);
        Stream<Interval> above = expected.stream().flatMap(limit -> limit.upper().stream()).map(Interval::above);
        return switch (outcome.key()) {
            case Step.WITHIN -> expected;
            case Step.BELOW -> below.toList();
            case Step.ABOVE -> above.toList();
            case Step.OUTSIDE -> Stream.concat(below, above).toList();
            default -> List.of();
        };
    }

    private static Stream<Interval> of(Step.Measure step, Written<Limit> limit) {
        return Stream.of(limit.value()).filter(one -> one.fits(Results.kind(step))).map(one -> one.interval(Results.kind(step)));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Closures;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.PartContact;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** A mains unit repaired inside and handed back without the tests that EN 50678 asks for after a repair. */
public final class ProtectionNotTested implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("protection-not-tested", Severity.ADVICE, Group.SAFETY,
            "A mains unit is repaired inside and handed back without the protective tests after a repair.");

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
        subject.procedure().ifPresent(procedure -> saidLow(procedure, findings));
        ProcedurePaths.of(subject).filter(ProtectionNotTested::isOnMains).ifPresent(paths -> {
            Repairs repairs = new Repairs(paths.map().procedure());
            List<InlinedStep> inside = paths.map().places().stream().filter(repairs::isRepair)
                    .filter(place -> paths.bench().at(place).stream().anyMatch(BenchStates.State::isOpen)).toList();
            if (!inside.isEmpty()) {
                check(paths, inside, findings);
            }
        });
    }

    /** Class III is fed by safety extra-low voltage (IEC 61140): no mains is inside. */
    private static void saidLow(Procedure procedure, Findings findings) {
        procedure.equipment().filter(equipment -> protection(procedure).filter(known -> known == ProtectionClass.III).isPresent())
                .ifPresent(equipment -> procedure.own().points().stream().filter(UnitVoltage::isOnMains).findFirst().ifPresent(point ->
                        findings.report(Severity.WARNING, equipment.at(), "The unit is said to be of class III, which is fed by safety extra-low voltage,"
                                + " and " + point.name() + " carries mains.", "Say class I or II, by which its tests and their limits are chosen;"
                                        + " or correct what the point carries and its category.")));
    }

    /** By what a point carries, or by its class: classes I and II are for units on the mains (IEC 61140), whatever points are named. */
    private static boolean isOnMains(ProcedurePaths paths) {
        return UnitVoltage.of(paths).hasMains()
                || protection(paths.map().procedure()).filter(known -> known != ProtectionClass.III).isPresent();
    }

    private static void check(ProcedurePaths paths, List<InlinedStep> inside, Findings findings) {
        Set<String> opened = inside.stream().flatMap(place -> paths.bench().at(place).stream()).flatMap(state -> open(paths, state)).collect(Collectors.toSet());
        Predicate<InlinedStep> inVain = OutcomeEffects.inVain(paths);
        Set<InlinedStep> canFail = paths.map().places().stream().filter(InlinedStep::isStep)
                .filter(place -> !place.step().frame().precautions().tests().isEmpty()).filter(place -> canFail(place, inVain)).collect(Collectors.toSet());
        List<ProtectiveTest> missing = new ArrayList<>();
        Optional<List<PathStep>> path = Optional.empty();
        for (ProtectiveTest test : asked(protection(paths.map().procedure()))) {
            Predicate<InlinedStep> tested = place -> place.isStep() && tests(place.step(), test) && canFail.contains(place)
                    && isClosedAgain(paths, place, opened);
            Set<InlinedStep> reopened = reopened(paths, tested);
            Routes.Reach untested = paths.routes().after(place -> inside.contains(place) || reopened.contains(place), tested);
            Optional<InlinedStep> end = paths.map().places().stream().filter(place -> place.step() instanceof Step.Conclude conclude
                    && !conclude.finds().isEmpty()).filter(untested::has).findFirst();
            if (end.isPresent()) {
                missing.add(test);
                path = path.or(() -> untested.path(end.get()));
            }
        }
        if (!missing.isEmpty()) {
            report(paths.map().procedure(), missing, path.orElseThrow(), findings);
        }
    }

    /** Where hands or tools go in again after a test: what it showed of the closed unit no longer counts. */
    private static Set<InlinedStep> reopened(ProcedurePaths paths, Predicate<InlinedStep> tested) {
        Repairs repairs = new Repairs(paths.map().procedure());
        Routes.Reach after = paths.routes().after(tested, place -> false);
        return paths.map().places().stream().filter(after::has).filter(place -> paths.bench().at(place).stream().anyMatch(state -> state.isOpen()
                && (!PartContact.inside(state, paths.map().scope()).isEmpty() || LiveWork.isWork(place, repairs) && !state.movesClosure()
                        && place.step().frame().precautions().tries().isEmpty()))).collect(Collectors.toSet());
    }

    /** What is only done, or goes on whatever it shows, tests nothing. */
    private static boolean canFail(InlinedStep place, Predicate<InlinedStep> inVain) {
        return !(place.step() instanceof Step.Do) && !(place.step() instanceof Step.Check && inVain.test(place));
    }

    /** Whether nothing is open any more of what was open at a repair. */
    private static boolean isClosedAgain(ProcedurePaths paths, InlinedStep place, Set<String> opened) {
        return paths.bench().at(place).stream().flatMap(state -> open(paths, state)).noneMatch(opened::contains);
    }

    private static Stream<String> open(ProcedurePaths paths, BenchStates.State state) {
        return paths.map().conditions().stream().filter(Closures::isClosure)
                .filter(closure -> !state.value(closure).text().equals(closure.ends().orElseThrow().text()))
                .map(closure -> closure.name() + " " + state.value(closure));
    }

    static boolean tests(Step step, ProtectiveTest test) {
        return step.frame().precautions().tests().stream().anyMatch(one -> one.value() == test);
    }

    static Optional<ProtectionClass> protection(Procedure procedure) {
        return procedure.equipment().flatMap(equipment -> equipment.protection()).map(Written::value);
    }

    /** Where the class is not said, what every mains unit needs. */
    private static List<ProtectiveTest> asked(Optional<ProtectionClass> protection) {
        return switch (protection.orElse(ProtectionClass.II)) {
            case I -> List.of(ProtectiveTest.CONDUCTOR, ProtectiveTest.INSULATION, ProtectiveTest.LEAKAGE);
            case II -> List.of(ProtectiveTest.INSULATION, ProtectiveTest.LEAKAGE);
            case III -> List.of(ProtectiveTest.INSULATION);
        };
    }

    private static void report(Procedure procedure, List<ProtectiveTest> missing, List<PathStep> path, Findings findings) {
        String open = protection(procedure).isPresent() ? "" : ", and in class I of the protective conductor; the equipment does not say its class";
        findings.report(procedure.equipment().map(equipment -> equipment.at()).orElse(procedure.name().at()),
                "A mains unit is repaired inside, and a path comes to " + path.get(path.size() - 1).step() + " without a test of "
                        + Listing.and(missing.stream().map(ProtectiveTest::spoken).toList()) + open + ".",
                "Test it after closing and before it is handed back, as EN 50678 asks: say tests "
                        + Listing.and(missing.stream().map(ProtectiveTest::word).toList()).replace(" and ", ", ") + " at the steps that do.",
                path);
    }
}

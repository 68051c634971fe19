/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.KnownBudgets;
import org.faultwright.analysis.order.OrderStudy;
import org.faultwright.analysis.order.OrderedTests;
import org.faultwright.analysis.rules.Listing;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.procedure.Procedure;
import org.faultwright.quantity.Exact;

/** The steps that only ask could be asked in an order that takes less time on average. */
public final class BetterOrder implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("better-order", Severity.ADVICE, Group.FAULTS,
            "Another order of the steps takes at least a tenth and a minute less on average.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    private static final Exact LEAST_SAVING = Exact.of(60);
    private static final Exact LEAST_SHARE = Exact.ratio(1, 10);

    /** What was found, once for each subject. */
    private record TriedOrder(Optional<OrderStudy.Verified> order) {
    }

    /** @param certain whether steps, faults and declarations alone say that no order is worth a word; no other rule was asked */
    private record NothingBetter(boolean certain) {
    }

    @Override
    public boolean takesLong() {
        return true;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        if (!isNothingBetter(subject)) {
            OrderStudy.in(subject).filter(BetterOrder::promises).flatMap(study -> verified(subject)).filter(found -> isWorthIt(found.comparison()))
                    .ifPresent(found -> report(found, findings));
        }
    }

    private static boolean promises(OrderStudy study) {
        return study.best().filter(BetterOrder::isWorthIt).isPresent();
    }

    private static boolean isNothingBetter(Subject subject) {
        return subject.shared(NothingBetter.class, s -> new NothingBetter(OrderStudy.in(s).filter(BetterOrder::promises)
                .filter(study -> verified(s).isPresent() || study.hasAskedRules()).isEmpty())).certain();
    }

    /** What was found of a text holds for it after a change that leaves its steps and faults alone, and need not be searched for again. */
    static void handOn(Subject before, Subject after) {
        boolean same = ChangedText.between(before.document(), after.document()).filter(ChangedText::isOfExamples).isPresent();
        if (same && isNothingBetter(before)) {
            after.takeOver(NothingBetter.class, new NothingBetter(true));
        }
    }

    /** The best order that saves anything, tried against all other rules; absent where there is none. */
    public static Optional<OrderStudy.Verified> verified(Subject subject) {
        return subject.shared(TriedOrder.class, s -> new TriedOrder(OrderStudy.in(s)
                .flatMap(study -> study.verified(procedure -> otherFindings(s, procedure))))).order();
    }

    private static boolean isWorthIt(OrderStudy.Comparison found) {
        return found.saving().compareTo(LEAST_SAVING) >= 0
                && found.saving().compareTo(found.before().times(LEAST_SHARE)) >= 0
                && found.authors() instanceof OrderedTests.Asked;
    }

    private static void report(OrderStudy.Verified verified, Findings findings) {
        OrderStudy.Comparison found = verified.comparison();
        OrderedTests.Asked first = (OrderedTests.Asked) found.authors();
        findings.report(first.step().name().at(), "Asked in another order, a case takes " + PrintedNumbers.minutes(found.after())
                + " on average instead of " + PrintedNumbers.minutes(found.before()) + ". " + found.reason(), advice(found),
                verified.fix());
    }

    private static String advice(OrderStudy.Comparison found) {
        StringBuilder advice = new StringBuilder("Ask in the order " + Listing.and(steps(found.better())) + ".");
        if (!found.presumed().isEmpty()) {
            advice.append(" This takes it that ").append(Listing.and(found.presumed()))
                    .append(" shows for the faults of which the table does not say it.");
        }
        if (!found.isBest()) {
            advice.append(" No order takes less than ").append(PrintedNumbers.minutes(found.bound())).append(".");
        }
        return advice.toString();
    }

    private static List<String> steps(OrderedTests order) {
        List<String> steps = new ArrayList<>();
        if (order instanceof OrderedTests.Asked asked) {
            steps.add(asked.step().name().text());
            asked.branches().forEach(branch -> steps(branch.then()).stream().filter(step -> !steps.contains(step))
                    .forEach(steps::add));
        }
        return steps;
    }

    /** What all other rules find in a procedure, and what waits behind something else; this one would go round in a circle. */
    private static List<Finding> otherFindings(Subject subject, Procedure procedure) {
        Checker others = new Checker(RuleSet.all().stream().filter(rule -> !rule.header().id().equals(HEADER.id())).toList(),
                subject.today());
        // much of what is found in the text as it stands has been computed already
        Subject tried = procedure == subject.document() ? subject : new Subject(procedure, subject.today());
        if (tried != subject) {
            tried.takeOver(KnownBudgets.class, KnownBudgets.of(subject));
        }
        Assessment assessed = others.assess(tried);
        return Stream.concat(assessed.findings().stream(), assessed.waiting().stream()).toList();
    }
}

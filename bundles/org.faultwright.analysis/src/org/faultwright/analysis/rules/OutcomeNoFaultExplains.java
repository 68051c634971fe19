/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.analysis.trace.StepWorth;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** An outcome leads on although no fault of the table can show it there. */
public final class OutcomeNoFaultExplains implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("outcome-no-fault-explains", Severity.ADVICE, Group.FAULTS,
            "An outcome leads further, and no fault of the table shows it there.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public boolean takesLong() {
        return true;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        // where every fault shows the same, outcome-already-known says so once, at the step
        Set<Step> known = StepWorth.in(subject).map(worth -> worth.knownBefore().keySet()).orElse(Set.of());
        FaultWalks.in(subject).filter(OutcomeNoFaultExplains::saysEnough).ifPresent(walks -> walks.table().steps().stream()
                .filter(step -> isQuestion(step) && !known.contains(step) && !walks.judgesRepair(step)
                        && !walks.table().isSilentAbout(step))
                .forEach(step -> check(step, walks, findings)));
    }

    /** A fault of which nothing is said could show anything. */
    private static boolean saysEnough(FaultWalks walks) {
        FaultTable table = walks.table();
        return table.size() > 0 && table.faults().stream().noneMatch(table::saysNothingOf)
                && walks.all().stream().allMatch(FaultWalk::isComplete);
    }

    private static boolean isQuestion(Step step) {
        return step.outcomes().size() > 1 && !(step instanceof Step.Do) && !(step instanceof Step.Perform)
                && step.frame().confirms().isEmpty();
    }

    private static void check(Step step, FaultWalks walks, Findings findings) {
        List<String> shown = walks.all().stream().flatMap(walk -> walk.shownAt(step).stream()).toList();
        if (shown.isEmpty()) {
            return;
        }
        step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.Word word && !word.key().equals(Step.DOUBTFUL)
                || outcome.head() instanceof Outcome.Code || outcome.head() instanceof Outcome.Band)
                .filter(outcome -> !shown.contains(outcome.key()) && !walks.endsWithoutFinding(outcome) && !triesAgain(step, outcome))
                .forEach(outcome -> findings.report(outcome.head().at(), "No fault that comes to " + step.name() + " shows \""
                        + outcome.key() + "\" there" + outcome.target().map(to -> ", and yet it leads on to " + to).orElse("")
                        + ".", "Say which fault does, or lead it to a conclusion that refers the unit."));
    }

    /** A bounded "not sure, once more" at the same step claims nothing about the unit. */
    private static boolean triesAgain(Step step, Outcome outcome) {
        return outcome.repeat().isPresent()
                && outcome.target().map(target -> target.text().equals(step.name().text())).orElse(false);
    }
}

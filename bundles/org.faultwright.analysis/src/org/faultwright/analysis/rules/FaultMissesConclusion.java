/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** A fault that the tree does not lead to a conclusion that finds it, though there is one. */
public final class FaultMissesConclusion implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("fault-misses-conclusion", Severity.ERROR, Group.FAULTS,
            "Following what a fault shows, the steps do not come to a conclusion that finds it.");

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
        FaultWalks.in(subject).filter(walks -> subject.procedure().flatMap(Procedure::first).isPresent())
                .ifPresent(walks -> walks.all().stream().filter(FaultWalk::isComplete).forEach(walk -> {
            if (walk.isConcluded() && !walk.reachesFinding()) {
                never(subject.procedure().orElseThrow(), walks.table(), walk, findings);
            }
            walk.endings().stream().filter(ending -> walk.reachesFinding() && ending.known() && !ending.finds())
                    .forEach(ending -> sometimes(walk.fault(), ending, findings));
        }));
    }

    private static void never(Procedure procedure, FaultTable table, FaultWalk walk, Findings findings) {
        Fault fault = walk.fault();
        List<String> finding = procedure.steps().stream().filter(step -> step instanceof Step.Conclude conclude
                && conclude.finds().stream().map(Name::text).anyMatch(fault.name().text()::equals))
                .map(step -> step.name().text()).toList();
        String never = fault.name() + " never comes to " + Listing.or(finding) + ": ";
        if (walk.parting().isEmpty()) {
            findings.report(fault.name().at(), never + "no path leads there.",
                    "Lead what " + fault.name() + " shows to where it is found.");
            return;
        }
        FaultWalk.Parting parting = walk.parting().get();
        Optional<String> next = parting.leadsTo().map(step -> step.name().text());
        boolean follows = table.follows(fault, parting.at());
        String shows = parting.outcome().isEmpty() ? "what it shows at " + parting.at().name()
                : "it shows " + (follows ? "what is normal, " : "") + '"' + parting.outcome() + (follows ? "\"," : "\"") + " at " + parting.at().name()
                        + ", which";
        findings.report(fault.name().at(), never + shows + " leads " + next.map(step -> "to " + step).orElse("nowhere") + ".",
                "Lead that outcome to where " + fault.name() + " is found, or " + (follows ? "say what it shows at " + parting.at().name() + "." : "correct what it shows."), path(parting));
    }

    private static List<PathStep> path(FaultWalk.Parting parting) {
        List<PathStep> path = new ArrayList<>(parting.path());
        path.set(path.size() - 1, new PathStep(parting.at().name().text(), parting.outcome(), parting.at().name().at()));
        parting.leadsTo().ifPresent(step -> path.add(new PathStep(step.name().text(), "", step.name().at())));
        return path;
    }

    private static void sometimes(Fault fault, FaultWalk.Ending ending, Findings findings) {
        boolean handedOn = ending.conclusion().refersTo().isPresent();
        String share = ending.probability().map(p -> "In " + PrintedNumbers.percent(p) + " of its cases ").orElse("In some of its cases ");
        findings.report(handedOn ? Severity.ADVICE : Severity.WARNING, fault.name().at(), share + fault.name() + " ends at "
                + ending.conclusion().name() + ", which does not find it, by outcomes that the table gives it.",
                "Lead these cases to where it is found, or correct what " + fault.name() + " shows.", ending.path());
    }
}

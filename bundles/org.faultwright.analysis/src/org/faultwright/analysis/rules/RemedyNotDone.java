/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** A fault is concluded although its remedy is not done on the way. */
public final class RemedyNotDone implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("remedy-not-done", Severity.WARNING, Group.FAULTS,
            "A fault comes to a conclusion that finds it without its remedy being done.");

    private static final String ADVICE = "Lead the path through the remedy, or say there with \"refers to\" who takes over the unit.";

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
        Set<String> reported = new HashSet<>();
        FaultWalks.in(subject).ifPresent(walks -> walks.all().stream().filter(FaultWalk::isComplete)
                .filter(walk -> hasRemedy(walk.fault(), subject.procedure().orElseThrow()))
                .forEach(walk -> check(walk, findings, reported)));
        ProcedurePaths.of(subject).ifPresent(paths -> subject.procedure().orElseThrow().steps().stream()
                .filter(Step.Conclude.class::isInstance).map(Step.Conclude.class::cast)
                .filter(conclusion -> !reported.contains(conclusion.name().text()))
                .forEach(conclusion -> check(conclusion, paths, findings)));
    }

    private static boolean hasRemedy(Fault fault, Procedure procedure) {
        return !fault.remedies().isEmpty() && fault.remedies().stream().allMatch(name -> procedure.step(name).isPresent());
    }

    private static void check(FaultWalk walk, Findings findings, Set<String> reported) {
        List<FaultWalk.Ending> finding = walk.endings().stream().filter(FaultWalk.Ending::finds)
                .filter(ending -> ending.conclusion().refersTo().isEmpty()).toList();
        boolean never = finding.stream().noneMatch(FaultWalk.Ending::repaired);
        finding.stream().filter(ending -> !ending.repaired() && (never || ending.known())).forEach(ending -> {
            reported.add(ending.conclusion().name().text());
            findings.report(walk.fault().name().at(), walk.fault().name() + " comes to " + ending.conclusion().name()
                    + " without its remedy " + remedies(List.of(walk.fault())) + " being done.", ADVICE, ending.path());
        });
    }

    /** Whatever the table says of it: a way past every remedy to a conclusion that takes the fault for repaired. */
    private static void check(Step.Conclude conclusion, ProcedurePaths paths, Findings findings) {
        Procedure procedure = paths.map().procedure();
        List<Fault> found = conclusion.finds().stream().flatMap(name -> procedure.fault(name).stream()).toList();
        boolean repaired = !found.isEmpty() && found.size() == conclusion.finds().size()
                && conclusion.refersTo().isEmpty() && found.stream().allMatch(fault -> hasRemedy(fault, procedure));
        paths.map().place(conclusion.name()).filter(place -> repaired).ifPresent(end -> {
            Routes.Reach past = paths.routes().without(place -> place.caller().isEmpty() && found.stream()
                    .flatMap(fault -> fault.remedies().stream()).anyMatch(name -> name.text().equals(place.step().name().text())));
            if (past.has(end)) {
                findings.report(conclusion.name().at(), "A path comes to " + conclusion.name() + ", which finds "
                        + Listing.names(found) + ", without " + remedies(found) + " being done.", ADVICE,
                        past.path(end).orElseThrow());
            }
        });
    }

    private static String remedies(List<Fault> faults) {
        return Listing.or(faults.stream().flatMap(fault -> fault.remedies().stream()).map(Object::toString).distinct().toList());
    }
}

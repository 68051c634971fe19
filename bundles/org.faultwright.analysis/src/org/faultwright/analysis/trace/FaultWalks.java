/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.faults.RepairSteps;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** The walks of all faults through one tree. */
public final class FaultWalks {
    private final LinkedSteps tree;
    private final FaultTable table;
    private final BitSet judges;
    private final List<StateGraph.Behaviour> behaviours;
    private final List<FaultWalk> walks;

    private FaultWalks(Procedure procedure, LinkedSteps tree, FaultTable table) {
        this.tree = tree;
        this.table = table;
        BitSet judges = RepairSteps.judges(tree, table, procedure.scope());
        int[] questionsLeft = RepairSteps.questionsLeft(tree);
        this.judges = judges;
        this.behaviours = table.faults().stream().<StateGraph.Behaviour>map(
                fault -> new FaultBehaviour(tree, table, fault, judges, questionsLeft)).toList();
        this.walks = IntStream.range(0, table.size())
                .mapToObj(i -> new FaultWalk(tree, table.faults().get(i), behaviours.get(i))).toList();
    }

    /** The walks in a subject that is a procedure, computed once. */
    public static Optional<FaultWalks> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(FaultWalks.class,
                s -> new FaultWalks(procedure, LinkedSteps.in(s, procedure), FaultTable.in(s).orElseThrow())));
    }

    public static FaultWalks of(Procedure procedure) {
        return in(new Subject(procedure, Optional.empty())).orElseThrow();
    }

    public FaultTable table() {
        return table;
    }

    /** One for each fault, in the order of the table. */
    public List<FaultWalk> all() {
        return walks;
    }

    /** The walk of one fault of the table. */
    public FaultWalk of(Fault fault) {
        return walks.get(table.faults().indexOf(fault));
    }

    /** Whether the step shows if a repair has held. */
    public boolean judgesRepair(Step step) {
        return tree.number(step.name().text()).stream().anyMatch(judges::get);
    }

    /** Whether an outcome leads without a further question to a conclusion that finds nothing or hands the unit on. */
    public boolean endsWithoutFinding(Outcome outcome) {
        int to = outcome.target().map(target -> tree.number(target.text()).orElse(LinkedSteps.NOWHERE)).orElse(LinkedSteps.NOWHERE);
        int end = to == LinkedSteps.NOWHERE ? to : tree.straightOn(to);
        return end != LinkedSteps.NOWHERE && tree.step(end) instanceof Step.Conclude conclude
                && conclude.finds().isEmpty() && (conclude.findsNothing().isPresent() || conclude.refersTo().isPresent());
    }

    List<StateGraph.Behaviour> behaviours() {
        return behaviours;
    }

    public LinkedSteps tree() {
        return tree;
    }
}

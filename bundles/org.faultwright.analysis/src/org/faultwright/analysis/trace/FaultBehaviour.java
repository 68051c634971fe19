/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.faults.FaultSignature;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * What a unit with one fault shows as it goes through the tree. Until one of its remedies has been done it
 * shows what the table says, and never passes a step that verifies a repair; once all of them have
 * been done it passes such a step, and what else it shows is open. Between the two either may be so.
 */
public final class FaultBehaviour implements StateGraph.Behaviour {
    private final LinkedSteps tree;
    private final FaultTable table;
    private final Fault fault;
    private final List<Integer> remedies;
    private final BitSet judges;
    private final int[] questionsLeft;

    FaultBehaviour(LinkedSteps tree, FaultTable table, Fault fault, BitSet judges, int[] questionsLeft) {
        this.tree = tree;
        this.table = table;
        this.fault = fault;
        this.remedies = tree.numbers(fault.remedies()).stream().limit(30).toList();
        this.judges = judges;
        this.questionsLeft = questionsLeft;
    }

    /** A unit of which nothing is known: every outcome is possible everywhere. */
    public static StateGraph.Behaviour anything(LinkedSteps tree) {
        return new StateGraph.Behaviour() {
            @Override
            public List<StateGraph.ShownResult> at(int step, int done) {
                return open(tree.arrows(step));
            }

            @Override
            public int doneAfter(int step, int done) {
                return done;
            }
        };
    }

    @Override
    public List<StateGraph.ShownResult> at(int step, int done) {
        List<LinkedSteps.Arrow> arrows = tree.arrows(step);
        if (arrows.size() == 1) {
            return List.of(new StateGraph.ShownResult(arrows.get(0), Optional.of(Exact.ONE), true));
        }
        int after = doneAfter(step, done);
        boolean mayBeRepaired = after != 0;
        boolean mayBeUnrepaired = !isRepaired(after);
        List<LinkedSteps.Arrow> passing = judges.get(step) ? passing(step) : List.of();
        List<StateGraph.ShownResult> unrepaired = mayBeUnrepaired ? unrepaired(step, arrows, passing) : List.of();
        if (!mayBeRepaired) {
            return unrepaired;
        }
        List<StateGraph.ShownResult> repaired = passing.isEmpty() ? open(arrows) : repaired(step, passing);
        return mayBeUnrepaired ? either(arrows, repaired, unrepaired) : repaired;
    }

    /** What the table says it shows there; where it says nothing, the results that mean the repair has held. */
    private List<StateGraph.ShownResult> repaired(int step, List<LinkedSteps.Arrow> passing) {
        FaultSignature cell = table.cell(fault, tree.step(step));
        List<LinkedSteps.Arrow> named = tree.arrows(step).stream().filter(arrow -> cell.outcomes().contains(arrow.key())).toList();
        List<LinkedSteps.Arrow> held = named.stream().filter(passing::contains).toList();
        return certain(!held.isEmpty() ? held : cell.isSilent() || named.isEmpty() ? passing : named);
    }

    @Override
    public int doneAfter(int step, int done) {
        int place = remedies.indexOf(step);
        return place < 0 ? done : done | 1 << place;
    }

    boolean isRepaired(int done) {
        return !remedies.isEmpty() && done == (1 << remedies.size()) - 1;
    }

    private List<StateGraph.ShownResult> unrepaired(int step, List<LinkedSteps.Arrow> arrows, List<LinkedSteps.Arrow> passing) {
        FaultSignature cell = table.cell(fault, tree.step(step));
        if (!cell.isSilent()) {
            return arrows.stream().filter(arrow -> cell.canShow(arrow.key()))
                    .map(arrow -> new StateGraph.ShownResult(arrow, cell.shares().get(arrow.key()), true)).toList();
        }
        List<LinkedSteps.Arrow> failing = arrows.stream().filter(arrow -> !passing.contains(arrow)).toList();
        return passing.isEmpty() || failing.isEmpty() ? open(arrows) : certain(failing);
    }

    private static List<StateGraph.ShownResult> certain(List<LinkedSteps.Arrow> arrows) {
        Optional<Exact> share = arrows.size() == 1 ? Optional.of(Exact.ONE) : Optional.empty();
        return arrows.stream().map(arrow -> new StateGraph.ShownResult(arrow, share, true)).toList();
    }

    private static List<StateGraph.ShownResult> open(List<LinkedSteps.Arrow> arrows) {
        return arrows.stream().map(arrow -> new StateGraph.ShownResult(arrow, Optional.empty(), false)).toList();
    }

    private static List<StateGraph.ShownResult> either(List<LinkedSteps.Arrow> arrows, List<StateGraph.ShownResult> one,
            List<StateGraph.ShownResult> other) {
        return open(arrows.stream().filter(arrow -> shows(one, arrow) || shows(other, arrow)).toList());
    }

    private static boolean shows(List<StateGraph.ShownResult> shown, LinkedSteps.Arrow arrow) {
        return shown.stream().anyMatch(s -> s.arrow().equals(arrow));
    }

    /**
     * The outcomes of a step that mean that the repair has held: what is expected of a reading, else those
     * with the fewest further questions before a conclusion that finds something. None where this does
     * not single any out.
     */
    private List<LinkedSteps.Arrow> passing(int step) {
        List<LinkedSteps.Arrow> arrows = tree.arrows(step);
        List<LinkedSteps.Arrow> within = arrows.stream().filter(a -> a.outcome().head() instanceof Outcome.Word
                && a.key().equals(Step.WITHIN)).toList();
        if (!within.isEmpty()) {
            return within;
        }
        int fewest = arrows.stream().mapToInt(this::questionsLeft).min().orElse(Integer.MAX_VALUE);
        List<LinkedSteps.Arrow> nearest = arrows.stream().filter(arrow -> questionsLeft(arrow) == fewest).toList();
        return nearest.size() == arrows.size() ? List.of() : nearest;
    }

    private int questionsLeft(LinkedSteps.Arrow arrow) {
        return arrow.to() == LinkedSteps.NOWHERE ? Integer.MAX_VALUE : questionsLeft[arrow.to()];
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/** Which steps of a tree repair, and which show whether a repair has held. */
public final class RepairSteps {
    private RepairSteps() {
    }

    /** The acts that repair, by their own word or as some fault's remedy. */
    static BitSet acts(LinkedSteps tree, FaultTable table) {
        BitSet found = new BitSet();
        for (int i = 0; i < tree.size(); i++) {
            if (tree.step(i) instanceof Step.Do task && task.repairs().isPresent()) {
                found.set(i);
            }
        }
        table.faults().forEach(fault -> tree.numbers(fault.remedies()).forEach(found::set));
        return found;
    }

    /** The steps that say they verify a repair, or perform a routine that does, and the repairs themselves. */
    public static BitSet judges(LinkedSteps tree, FaultTable table, Scope scope) {
        BitSet found = acts(tree, table);
        for (int i = 0; i < tree.size(); i++) {
            if (verifies(tree.step(i), scope)) {
                found.set(i);
            }
        }
        return found;
    }

    /** Whether the step says that it verifies a repair, or performs a routine that does. */
    public static boolean verifies(Step step, Scope scope) {
        return verifies(step, scope, new HashSet<>());
    }

    private static boolean verifies(Step step, Scope scope, Set<String> entered) {
        if (step.frame().verifies().isPresent()) {
            return true;
        }
        Optional<Routine> routine = step instanceof Step.Perform perform
                ? perform.routine().flatMap(scope::routine) : Optional.empty();
        return routine.isPresent() && entered.add(routine.get().name().text())
                && routine.get().steps().stream().anyMatch(inner -> verifies(inner, scope, entered));
    }

    /** The fewest steps of several outcomes between each step and a conclusion that finds something. */
    public static int[] questionsLeft(LinkedSteps tree) {
        int[] left = new int[tree.size()];
        Arrays.fill(left, Integer.MAX_VALUE);
        Deque<Integer> open = new ArrayDeque<>();
        for (int i = 0; i < tree.size(); i++) {
            if (tree.step(i) instanceof Step.Conclude conclude && !conclude.finds().isEmpty()) {
                left[i] = 0;
                open.add(i);
            }
        }
        List<List<Integer>> back = new ArrayList<>();
        for (int i = 0; i < tree.size(); i++) {
            back.add(new ArrayList<>());
        }
        for (int i = 0; i < tree.size(); i++) {
            for (LinkedSteps.Arrow arrow : tree.arrows(i)) {
                if (arrow.to() != LinkedSteps.NOWHERE) {
                    back.get(arrow.to()).add(i);
                }
            }
        }
        while (!open.isEmpty()) {
            int at = open.remove();
            for (int before : back.get(at)) {
                int questions = left[at] + (tree.arrows(before).size() > 1 ? 1 : 0);
                if (questions < left[before]) {
                    left[before] = questions;
                    open.add(before);
                }
            }
        }
        return left;
    }
}

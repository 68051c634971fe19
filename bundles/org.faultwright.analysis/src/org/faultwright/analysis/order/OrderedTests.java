/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Step;

/** An order of tests to be shown: what is asked, and what follows each result that a fault still possible shows. */
public sealed interface OrderedTests {
    /** @param branches in the order of the step's outcomes */
    record Asked(Step step, List<Branch> branches) implements OrderedTests {
    }

    record Branch(String outcome, OrderedTests then) {
    }

    /** @param faults still possible here @param goesOnTo the step that follows */
    record Settled(List<Fault> faults, Step goesOnTo) implements OrderedTests {
    }

    static OrderedTests of(TestTree order, AskingPart part, LinkedSteps tree) {
        if (order instanceof TestTree.Ask ask) {
            Step step = tree.step(part.tests().get(ask.test()));
            List<Branch> branches = new ArrayList<>();
            for (Map.Entry<Integer, TestTree> next : ask.next().entrySet()) {
                branches.add(new Branch(step.outcomes().get(next.getKey()).key(), of(next.getValue(), part, tree)));
            }
            return new Asked(step, List.copyOf(branches));
        }
        List<Integer> left = ((TestTree.Left) order).faults();
        return new Settled(left.stream().map(part.faults()::get).toList(), tree.step(part.exit(left.get(0)).entry()));
    }

    /** One line for each step and result, indented by how deep it lies. */
    default List<String> lines() {
        List<String> lines = new ArrayList<>();
        write(lines, "");
        return lines;
    }

    private void write(List<String> lines, String indent) {
        if (this instanceof Asked asked) {
            lines.add(indent + asked.step().name());
            asked.branches().forEach(branch -> {
                lines.add(indent + "  " + branch.outcome());
                branch.then().write(lines, indent + "    ");
            });
        } else if (this instanceof Settled settled) {
            lines.add(indent + String.join(", ", settled.faults().stream().map(fault -> fault.name().text()).toList())
                    + ": " + settled.goesOnTo().name());
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** Says in one sentence why an order is good: what its first test settles, and in what time. */
final class OrderReason {
    private final AskingPart part;
    private final Tree tree;
    private final Times times;
    private final FaultTable table;

    OrderReason(AskingPart part, Tree tree, Times times, FaultTable table) {
        this.part = part;
        this.tree = tree;
        this.times = times;
        this.table = table;
    }

    String of(TestTree order) {
        if (!(order instanceof TestTree.Ask first)) {
            return "";
        }
        Step step = tree.step(part.tests().get(first.test()));
        String time = TimeText.written(times.of(step, "").expected());
        Exact settled = Exact.ZERO;
        Exact largest = Exact.ZERO;
        for (Map.Entry<Integer, TestTree> next : first.next().entrySet()) {
            Exact share = share(next.getValue());
            largest = largest.max(share);
            settled = next.getValue() instanceof TestTree.Left ? settled.plus(share) : settled;
        }
        return settled.signum() > 0
                ? step.name() + " first settles " + Figures.percent(settled) + " of the cases in " + time + "."
                : step.name() + " first leaves at most " + Figures.percent(largest) + " of the cases open in " + time + ".";
    }

    /** How much of what comes to this part ends in a branch; a fault that may go several ways counts in each. */
    private Exact share(TestTree branch) {
        List<Integer> faults = faults(branch);
        Exact all = part.faults().stream().map(table::weight).reduce(Exact.ZERO, Exact::plus);
        Exact some = faults.stream().map(part.faults()::get).map(table::weight).reduce(Exact.ZERO, Exact::plus);
        return all.signum() > 0 ? some.dividedBy(all) : Exact.ZERO;
    }

    private static List<Integer> faults(TestTree branch) {
        return branch instanceof TestTree.Ask ask
                ? ask.next().values().stream().flatMap(next -> faults(next).stream()).distinct().toList()
                : ((TestTree.Left) branch).faults();
    }
}

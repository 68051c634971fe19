/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** Says why an order is good: what each test settles, in what time, and that covers stay on as long as they can. */
final class OrderReason {
    private final AskingPart part;
    private final PartSetUps setUps;
    private final LinkedSteps tree;
    private final StepTimes times;
    private final FaultTable table;

    OrderReason(AskingPart part, PartSetUps setUps, LinkedSteps tree, StepTimes times, FaultTable table) {
        this.part = part;
        this.setUps = setUps;
        this.tree = tree;
        this.times = times;
        this.table = table;
    }

    /** One sentence for each test, as they are asked; a test that is asked in several places is told once. */
    List<String> all(TestTree order) {
        Set<String> all = new LinkedHashSet<>();
        List<String> closed = new ArrayList<>();
        tell(order, part.setUp(), all, closed, new LinkedHashSet<>());
        return List.copyOf(all);
    }

    private void tell(TestTree order, List<Integer> setUp, Set<String> all, List<String> closed, Set<Integer> told) {
        if (!(order instanceof TestTree.Ask ask)) {
            return;
        }
        List<Name> opened = setUps.opening(setUp, ask.test());
        if (told.add(ask.test())) {
            String name = tree.step(part.tests().get(ask.test())).name().text();
            all.add(of(ask) + (opened.isEmpty() || closed.isEmpty() ? "" : " What has to be opened for it (" + String.join(", ",
                    opened.stream().map(Name::text).toList()) + ") stays shut for " + String.join(", ", closed) + "."));
            if (opened.isEmpty()) {
                closed.add(name);
            }
        }
        ask.next().forEach((outcome, next) -> tell(next, setUps.after(setUp, ask.test(), outcome), all, new ArrayList<>(closed), told));
    }

    String of(TestTree order) {
        if (!(order instanceof TestTree.Ask first)) {
            return "";
        }
        Step step = tree.step(part.tests().get(first.test()));
        String time = TimeText.written(times.of(step, "").expected());
        Exact all = share(first);
        Exact settled = Exact.ZERO;
        Exact largest = Exact.ZERO;
        for (Map.Entry<Integer, TestTree> next : first.next().entrySet()) {
            Exact share = all.signum() > 0 ? share(next.getValue()).dividedBy(all) : Exact.ZERO;
            largest = largest.max(share);
            settled = next.getValue() instanceof TestTree.Left ? settled.plus(share) : settled;
        }
        boolean isFirst = all.compareTo(Exact.ONE) >= 0;
        String cases = isFirst ? " of the cases in " : " of the cases that come to it in ";
        return settled.signum() > 0
                ? step.name() + (isFirst ? " first" : "") + " settles " + PrintedNumbers.percent(settled) + cases + time + "."
                : step.name() + (isFirst ? " first" : "") + " leaves at most " + PrintedNumbers.percent(largest) + " of the cases open in " + time + ".";
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

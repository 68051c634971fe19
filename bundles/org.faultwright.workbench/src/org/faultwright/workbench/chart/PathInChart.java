/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.PathStep;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartArrow;

/** The path of a finding as far as it is seen in a chart: a step within a folded routine is the box of the routine. */
record PathInChart(List<String> boxes, Set<ChartArrow> arrows) {
    static final PathInChart NONE = new PathInChart(List.of(), Set.of());

    static PathInChart of(List<PathStep> path, Chart chart) {
        List<String> boxes = new ArrayList<>();
        Set<ChartArrow> arrows = Collections.newSetFromMap(new IdentityHashMap<>());
        String outcome = "";
        for (PathStep step : path) {
            Optional<String> key = seen(step.step(), chart);
            if (key.isPresent()) {
                String last = boxes.isEmpty() ? "" : boxes.get(boxes.size() - 1);
                boolean same = key.get().equals(last) && !key.get().equals(step.step());
                if (!same) {
                    arrow(chart, last, key.get(), outcome).ifPresent(arrows::add);
                    boxes.add(key.get());
                }
                outcome = step.outcome();
            }
        }
        return new PathInChart(boxes, arrows);
    }

    private static Optional<String> seen(String step, Chart chart) {
        String key = step;
        while (chart.box(key).isEmpty()) {
            int end = key.lastIndexOf('/');
            if (end < 0) {
                return Optional.empty();
            }
            key = key.substring(0, end);
        }
        return Optional.of(key);
    }

    /** The arrow of that result, or else any between the two. */
    private static Optional<ChartArrow> arrow(Chart chart, String from, String to, String outcome) {
        List<ChartArrow> between = chart.from(from).stream().filter(arrow -> arrow.to().equals(to)).toList();
        return between.stream().filter(arrow -> chart.box(from).get().cells().get(arrow.cell()).outcome().key().equals(outcome)).findFirst()
                .or(() -> between.stream().findFirst());
    }
}

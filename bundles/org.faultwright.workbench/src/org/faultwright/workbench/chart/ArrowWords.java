/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.List;
import org.faultwright.analysis.time.ArrowStudy;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.publish.chart.ChartArrow;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.quantity.Exact;

/** What stands at an arrow: of a hundred units how many come this way, and how long after the beginning. */
record ArrowWords(ArrowStudy study) {
    /** Nothing within an opened routine, and of an arrow by which no fault goes. */
    List<String> of(ChartBox from, ChartArrow arrow) {
        boolean ownStep = from.key().equals(from.step().name().text()) || ClosingStep.is(from.step());
        return !ownStep ? List.of() : study.of(from.step().name().text(), arrow.cell(), arrow.otherwise())
                .map(figure -> List.of(percent(figure.share()), time(figure.seconds()))).orElse(List.of());
    }

    private static String percent(double share) {
        return share < 0.005 ? "under 1 %" : share > 10 ? "again and again" : Math.round(100 * share) + " %";
    }

    private static String time(double seconds) {
        return seconds < 59.5 ? Math.round(seconds) + " s" : TimeText.written(Exact.of(60 * Math.round(seconds / 60)));
    }
}

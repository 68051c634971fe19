/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/** Where a measurement puts its probes. */
public final class ProbePoints {
    private ProbePoints() {
    }

    public static List<Name> names(Step.Measure step) {
        return Stream.of(step.point().stream(), step.rows().stream().map(Step.Row::point), step.against().stream())
                .flatMap(names -> names).toList();
    }

    public static List<Point> points(Step.Measure step, Scope scope) {
        return names(step).stream().flatMap(name -> scope.point(name).stream()).toList();
    }
}

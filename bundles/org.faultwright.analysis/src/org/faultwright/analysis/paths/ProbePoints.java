/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/** Where a measurement puts its probes. */
public final class ProbePoints {
    private ProbePoints() {
    }

    public static List<Name> names(Step.Measure step) {
        List<Name> names = new ArrayList<>();
        step.point().ifPresent(names::add);
        step.rows().forEach(row -> names.add(row.point()));
        step.against().ifPresent(names::add);
        return names;
    }

    public static List<Point> points(Step.Measure step, Scope scope) {
        List<Point> points = new ArrayList<>();
        names(step).forEach(name -> scope.point(name).ifPresent(points::add));
        return points;
    }
}

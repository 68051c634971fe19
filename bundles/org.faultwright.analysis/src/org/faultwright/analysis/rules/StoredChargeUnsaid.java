/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Probes;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** A point that stores more than a person may touch, in a procedure that knows no charge. */
public final class StoredChargeUnsaid implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("stored-charge-unsaid", Severity.ERROR, Group.STATE,
            "A point stores more than a person may touch, and no condition says when it is charged.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).filter(paths -> paths.bench().charged().isEmpty()).ifPresent(paths ->
                StoredCharges.dangerous(paths)
                        .forEach(stored -> findings.report(at(paths, stored.point()), stored.point().name()
                                + " holds more than a person may touch (IEC 60335-1), and no condition says when it is charged: "
                                + stored.energy().inWords() + ".",
                                "Declare one, such as: condition Charge { present, absent } charged when present becomes present when"
                                        + " Supply on proved at " + stored.point().name() + ".")));
    }

    /** Where the point says what it stores; of a point of a library, where the procedure first reads it. */
    private static SourceRange at(ProcedurePaths paths, Point point) {
        return paths.map().procedure().own().points().contains(point) ? point.stores().orElseThrow().at()
                : paths.map().places().stream().filter(paths::reaches).filter(place -> place.step() instanceof Step.Measure measure
                        && Probes.points(measure, paths.map().scope()).contains(point)).findFirst()
                        .map(place -> PlaceText.at(place, place.step().name().at())).orElseThrow();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Puts another instrument into a step, without the range that was named for the first. */
final class InstrumentFixes {
    private InstrumentFixes() {
    }

    static Fix[] use(Step.Measure step, List<Name> others) {
        return step.instrument().isEmpty() ? new Fix[0]
                : others.stream().filter(other -> !other.text().equals(step.instrument().get().text()))
                        .map(other -> Fix.replacing("Use " + other, withRange(step), other.text())).toArray(Fix[]::new);
    }

    private static SourceRange withRange(Step.Measure step) {
        SourceRange name = step.instrument().get().at();
        int end = step.range().map(range -> range.at().end()).orElse(name.end());
        return new SourceRange(name.source(), name.offset(), end - name.offset());
    }

    static String listed(List<Name> names) {
        return String.join(" or ", names.stream().map(Name::text).toList());
    }
}

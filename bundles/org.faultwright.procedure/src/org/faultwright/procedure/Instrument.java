/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;

/**
 * @param rated    the highest voltage its terminals are rated for
 * @param category its measurement category after IEC 61010-2-030: 2, 3 or 4; absent means not for mains
 * @param validAt  the ambient temperatures its accuracy statement holds for
 * @param calibrationEvery the calibration interval
 * @param calibrationDue the day its calibration runs out
 */
public record Instrument(Name name, String title, List<Written<MeterRange>> ranges,
        Optional<Written<Quantity>> rated, Optional<Written<Integer>> category, Optional<Written<Limit>> validAt,
        Optional<Written<Quantity>> calibrationEvery, Optional<Written<LocalDate>> calibrationDue, SourceRange at)
        implements Declaration {
}

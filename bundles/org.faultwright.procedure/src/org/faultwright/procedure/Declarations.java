/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Limit;

/**
 * The declarations that a library shares and a procedure may also hold for itself.
 *
 * @param ambient the temperatures at the bench, where stated
 */
public record Declarations(List<Condition> conditions, List<Instrument> instruments, List<Point> points,
        List<Part> parts, List<Indicator> indicators, List<Note> notes, List<Routine> routines,
        Optional<Written<Limit>> ambient) {
    public static final Declarations NONE = new Declarations(List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), List.of(), Optional.empty());
}

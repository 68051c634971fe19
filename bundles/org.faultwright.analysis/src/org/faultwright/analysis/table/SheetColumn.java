/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

/** A column of the table as it is shown. */
public sealed interface SheetColumn {
    /** What is broken. */
    record Words() implements SheetColumn {
    }

    /** How often it was met. */
    record Cases() implements SheetColumn {
    }

    /** How long it takes to its conclusion, which is computed. */
    public record Time() implements SheetColumn {
    }

    /** What repairs it. */
    record Remedy() implements SheetColumn {
    }

    /** What a step shows. */
    record OfStep(String name) implements SheetColumn {
    }
}

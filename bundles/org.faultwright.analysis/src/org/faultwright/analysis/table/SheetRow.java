/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

/** A row of the table as it is shown. */
public sealed interface SheetRow {
    /** What a fault shows. */
    record OfFault(String name) implements SheetRow {
    }

    /** How long each step takes. */
    record Takes() implements SheetRow {
    }

    /** What a sound unit shows. */
    record Normal() implements SheetRow {
    }
}

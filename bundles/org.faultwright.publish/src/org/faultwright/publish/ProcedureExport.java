/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** An export of one procedure. The same publication gives the same bytes, on any day and any machine. */
public non-sealed interface ProcedureExport extends Export {
    Published publish(Publication publication);
}

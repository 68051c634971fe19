/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** An export of a folder of procedures. The same folder gives the same bytes, on any day and any machine. */
public non-sealed interface FolderExport extends Export {
    Published publish(ProcedureFolder folder);
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** An export of a folder of procedures. The same collection gives the same bytes, on any day and any machine. */
public non-sealed interface CollectionExport extends Export {
    Published publish(Collection collection);
}

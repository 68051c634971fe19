/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import org.faultwright.procedure.Library;

/** An export of each library that the published procedures use. The same library gives the same bytes. */
public non-sealed interface LibraryExport extends Export {
    Published publish(Library library);
}

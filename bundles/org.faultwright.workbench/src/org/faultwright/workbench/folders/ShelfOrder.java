/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import org.eclipse.core.resources.IContainer;
import org.eclipse.jface.viewers.ViewerComparator;

/** Procedures by their file names, folders of libraries behind them. */
final class ShelfOrder extends ViewerComparator {
    @Override
    public int category(Object element) {
        return element instanceof IContainer ? 1 : 0;
    }
}

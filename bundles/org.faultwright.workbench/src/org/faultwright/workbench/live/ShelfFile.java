/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.util.List;
import org.faultwright.analysis.Finding;

/**
 * A file of an open folder as it stands on disk.
 *
 * @param findings what every rule found; empty until it was checked
 */
public record ShelfFile(FileHead head, List<Finding> findings, boolean checked) {
}

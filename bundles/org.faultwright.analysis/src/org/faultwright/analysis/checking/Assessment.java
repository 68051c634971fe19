/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.List;
import org.faultwright.analysis.Finding;

/**
 * What rules found in one document.
 *
 * @param findings what stands, in reading order
 * @param waiting  what was found too but may only follow from words that cannot be read or names that lead nowhere;
 *                 it is told when those are mended, if it is still found then
 */
public record Assessment(List<Finding> findings, List<Finding> waiting) {
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/** The correlation coefficient of two readings, from −1 to 1 (JCGM 100:2008, 5.2.2). */
public record Correlation(String one, String other, double coefficient) {
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/**
 * One line of an explanation.
 *
 * @param label   what it is, such as {@code half-width at 22.8 V}
 * @param value   with its unit
 * @param formula how it was got
 * @param clause  the standard and clause, or the convention, that says so
 */
public record BudgetLine(String label, String value, String formula, String clause) {
}

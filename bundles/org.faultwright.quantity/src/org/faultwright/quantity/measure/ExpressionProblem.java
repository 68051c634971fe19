/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/**
 * Why a derived value has no result.
 *
 * @param place    the part of the expression that it is about
 * @param sentence what is wrong and what to do
 */
public record ExpressionProblem(Expression place, String sentence) {
}

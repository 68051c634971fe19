/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/** Words that could not be read as part of the language; what stands around them was still understood. */
public record ReadingProblem(String message, SourceRange at) {
}

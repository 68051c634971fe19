/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/** A value together with the words that state it. */
public record Written<T>(T value, SourceRange at) {
}

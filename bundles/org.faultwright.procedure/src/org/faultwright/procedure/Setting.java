/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/** A condition at a value, such as {@code Supply on}. */
public record Setting(Name condition, Name value, SourceRange at) {
    /** Whether both ask for the same, wherever they stand. */
    public boolean says(Setting other) {
        return condition.text().equals(other.condition.text()) && value.text().equals(other.value.text());
    }
}

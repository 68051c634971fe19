/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/**
 * A name as written, either where something is declared or where it is referred to. A reference may
 * name nothing at all: a rule reports that.
 */
public record Name(String text, SourceRange at) {
    @Override
    public String toString() {
        return text;
    }
}

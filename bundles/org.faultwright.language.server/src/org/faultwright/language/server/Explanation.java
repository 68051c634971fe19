/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import org.faultwright.procedure.SourceRange;

/** What there is to say about the words at one place. @param at the words @param markdown a few lines */
public record Explanation(SourceRange at, String markdown) {
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/**
 * A picture beside the text.
 *
 * @param file  its name as written, in the folder of the text or one below it
 * @param shows what it shows, for whoever cannot see it; may be empty
 */
public record Picture(Written<String> file, String shows, SourceRange at) {
}

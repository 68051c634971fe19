/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.util.Optional;
import org.faultwright.procedure.SourceText;

/**
 * One library that was looked for while a text was read.
 *
 * @param library  the name that {@code uses} gives
 * @param fromFile the name of the text that uses it
 * @param found    its text; absent where there is none
 */
public record LibraryLookup(String library, String fromFile, Optional<SourceText> found) {
}

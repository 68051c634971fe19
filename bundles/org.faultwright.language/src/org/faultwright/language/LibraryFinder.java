/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.util.Optional;
import org.faultwright.procedure.SourceText;

/** Finds the text of a library by the name that {@code uses} gives. */
public interface LibraryFinder {
    /** @param fromFile the name of the text that uses it, as {@link SourceText#name()} gives it */
    Optional<SourceText> find(String library, String fromFile);
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;

/** A lamp, sounder or read-out with the table of its codes. */
public record Indicator(Name name, String title, List<Code> codes, Optional<Source> source, List<Picture> pictures, SourceRange at)
        implements Declaration {
    /**
     * @param pattern what is seen or heard, in one spelling: {@code 3 blinks}
     * @param meaning what the document says it means
     */
    public record Code(Name pattern, String meaning, SourceRange at) {
    }
}

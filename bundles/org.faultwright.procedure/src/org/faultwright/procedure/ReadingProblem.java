/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Optional;

/**
 * Words that could not be read as part of the language; what stands around them was still understood.
 *
 * @param block the declaration or step they stand in; absent where it is not known
 */
public record ReadingProblem(String message, SourceRange at, Optional<DamagedBlock> block) {
    public ReadingProblem(String message, SourceRange at) {
        this(message, at, Optional.empty());
    }

    public ReadingProblem in(DamagedBlock damaged) {
        return new ReadingProblem(message, at, Optional.of(damaged));
    }
}

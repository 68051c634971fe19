/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Optional;

/**
 * What an expression came to.
 *
 * @param result  absent when there is a problem
 * @param problem the first one met
 */
public record Evaluation<T>(Optional<T> result, Optional<ExpressionProblem> problem) {
    static <T> Evaluation<T> of(T result, Optional<ExpressionProblem> problem) {
        return problem.isPresent() ? new Evaluation<>(Optional.empty(), problem)
                : new Evaluation<>(Optional.of(result), problem);
    }
}

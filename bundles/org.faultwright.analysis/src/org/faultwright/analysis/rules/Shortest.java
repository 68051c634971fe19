/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Name;

/** The value of several that the shortest path leads to. */
record Shortest(Name value, List<PathStep> path) {
    /** @param values at least one, each with a path */
    static Shortest of(List<Name> values, Function<Name, Optional<List<PathStep>>> path) {
        return values.stream().map(value -> new Shortest(value, path.apply(value).orElseThrow()))
                .min(Comparator.comparingInt(one -> one.path().size())).orElseThrow();
    }
}

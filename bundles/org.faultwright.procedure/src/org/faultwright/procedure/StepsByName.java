/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.AbstractList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.RandomAccess;

/** The steps of a graph, found by name without looking through them all; of two with one name the first counts. */
final class StepsByName extends AbstractList<Step> implements RandomAccess {
    private final List<Step> steps;
    private volatile Map<String, Step> byName;

    private StepsByName(List<Step> steps) {
        this.steps = List.copyOf(steps);
    }

    /** Made when it is first asked for: a document is put together several times before somebody does. */
    private Map<String, Step> byName() {
        Map<String, Step> known = byName;
        if (known == null) {
            known = new HashMap<>();
            for (Step step : steps) {
                known.putIfAbsent(step.name().text(), step);
            }
            byName = known;
        }
        return known;
    }

    static List<Step> of(List<Step> steps) {
        return steps instanceof StepsByName ? steps : new StepsByName(steps);
    }

    static Optional<Step> find(List<Step> steps, Name name) {
        return Optional.ofNullable(((StepsByName) steps).byName().get(name.text()));
    }

    @Override
    public Step get(int index) {
        return steps.get(index);
    }

    @Override
    public int size() {
        return steps.size();
    }
}

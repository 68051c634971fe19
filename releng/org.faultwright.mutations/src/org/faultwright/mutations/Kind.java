/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A kind of change.
 *
 * @param title   in words, as in "a band left out"
 * @param found   the rules that may rightly report it; empty for a change that does no harm
 * @param besides rules that may report its consequences as well, but do not count as having found it
 * @param isDangerous whether somebody can be hurt where it is missed
 * @param seeds   every place of a specimen where the change can be made
 */
record Kind(String title, Set<String> found, Set<String> besides, boolean isDangerous, Function<Specimen, Stream<Seed>> seeds) {
    static Kind of(String title, Set<String> found, Function<Specimen, Stream<Seed>> seeds) {
        return new Kind(title, found, Set.of(), false, specimen -> seeds.apply(specimen).filter(seed -> seed.edits().stream().noneMatch(SpecimenEdits::isNothing)));
    }

    Kind besides(Set<String> more) {
        Set<String> all = new HashSet<>(besides);
        all.addAll(more);
        return new Kind(title, found, all, isDangerous, seeds);
    }

    /** One that hurts somebody where it is missed. */
    Kind dangerous() {
        return new Kind(title, found, besides, true, seeds);
    }

    boolean isHarmless() {
        return found.isEmpty();
    }

    boolean expects(String rule) {
        return found.contains(rule) || besides.contains(rule);
    }
}

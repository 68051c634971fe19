/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.List;
import java.util.stream.Stream;

/** Every rule there is, in the order of the index. Listings are built from this list alone. */
public final class RuleSet {
    private static final List<Rule> ALL = Stream.of(names(), quantities(), instruments(), paths(), state(), safety(),
            faults(), examples(), record()).flatMap(List::stream).toList();

    private RuleSet() {
    }

    public static List<Rule> all() {
        return ALL;
    }

    private static List<Rule> names() {
        return List.of();
    }

    private static List<Rule> quantities() {
        return List.of();
    }

    private static List<Rule> instruments() {
        return List.of();
    }

    private static List<Rule> paths() {
        return List.of();
    }

    private static List<Rule> state() {
        return List.of();
    }

    private static List<Rule> safety() {
        return List.of();
    }

    private static List<Rule> faults() {
        return List.of();
    }

    private static List<Rule> examples() {
        return List.of();
    }

    private static List<Rule> record() {
        return List.of();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.List;

/** Every rule there is, in the order of the index. Listings are built from this list alone. */
public final class RuleSet {
    private static final List<Rule> ALL = List.of();

    private RuleSet() {
    }

    public static List<Rule> all() {
        return ALL;
    }
}

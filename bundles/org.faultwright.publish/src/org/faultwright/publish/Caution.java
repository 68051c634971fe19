/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** What every card, tree and page says before anything else. */
public final class Caution {
    public static final String FIRST = "Local codes, the maker's instructions and licensed practice come first, "
            + "before anything printed here.";
    public static final String TRAINED = "Work on mains, stored energy and lithium cells is for trained people.";
    /** Both sentences. */
    public static final String SENTENCES = FIRST + " " + TRAINED;

    private Caution() {
    }
}

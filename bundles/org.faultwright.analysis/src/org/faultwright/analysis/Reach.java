/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

/** How far a rule looks for what it says of one place, so that an editor asks it again only where a change may matter. */
public enum Reach {
    /**
     * At one step, fault or example and at what is declared beside them; never from one of them to another, and not at what it reported before.
     * Whatever it reports lies in the one that it looks at.
     */
    ONE_BLOCK,

    /** At all of a text but its words for a person: the titles, hints, reports, sources and pictures of steps and faults. */
    MEANING,

    /** At anything, such as files, remarks or the spelling of the text; or it says in which line something else stands. */
    EVERYTHING
}

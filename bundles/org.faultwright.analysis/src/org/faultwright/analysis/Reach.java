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

    /** At the same as {@link #PATHS}, and at what is written where an outcome leads to nothing that is known. */
    NAMES,

    /**
     * At the same as {@link #MEANING}, but not at the limits that readings are held against: only at what such a limit proves, what it tells of a danger,
     * which readings that the fault table, an example or a formula tells it decides, and what a protective test asks for.
     */
    PATHS,

    /** At the same as {@link #MEANING}, but not at where outcomes lead. */
    READINGS,

    /**
     * At all of a text but its words for a person: the titles, hints, reports, sources and pictures of steps and faults. Of an outcome that leads to
     * a name which nothing has, and which stands nowhere else in the text, only that it leads nowhere.
     */
    MEANING,

    /** At anything, such as files, remarks or the spelling of the text; or it says in which line something else stands. */
    EVERYTHING
}

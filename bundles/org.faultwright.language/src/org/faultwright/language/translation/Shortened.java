/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

/** Words quoted in a message, cut where they would fill the screen. */
final class Shortened {
    private static final int LONGEST = 40;

    private Shortened() {
    }

    static String of(String words) {
        return words.length() <= LONGEST ? words : words.substring(0, LONGEST) + "…";
    }
}

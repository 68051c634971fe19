/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.Locale;

/** Small parts of sentences that are said in many places. */
public final class Phrases {
    private Phrases() {
    }

    /** Such as {@code 1 library} and {@code 2 libraries}. */
    public static String counted(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** The same where the plural takes an s. */
    public static String counted(long number, String one) {
        return counted(number, one, one + "s");
    }

    /** As a sentence begins. */
    public static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One spelling for what is the same to a reader. */
final class Spelling {
    private static final Pattern COUNTED = Pattern.compile("([0-9]+)\\s*([^0-9\\s.+-].*)");
    private static final Pattern CODED_VALUE = Pattern.compile("[0-9]+[A-Za-z\\u00B5\\u03BC][0-9]+");

    private Spelling() {
    }

    /** A code or reading with one space between its number and its word: {@code 3blinks} is {@code 3 blinks}. */
    static String ofCode(String words) {
        if (words.isEmpty() || !Character.isDigit(words.charAt(0)) || CODED_VALUE.matcher(words).matches()) {
            return words;
        }
        Matcher counted = COUNTED.matcher(words);
        return counted.matches() ? counted.group(1) + " " + counted.group(2) : words;
    }
}

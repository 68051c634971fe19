/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.Set;

/** How makers write counts of the last digit in an accuracy statement. */
final class AccuracyWords {
    private static final Set<String> DIGITS = Set.of("digits", "digit", "counts", "count", "dgt", "dgts", "LSD", "lsd");

    private AccuracyWords() {
    }

    static boolean countDigits(String unit) {
        return DIGITS.contains(unit);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.text.Normalizer;
import java.util.Locale;

/** A name made of words: {@code Head too cold} becomes {@code HeadTooCold}. */
public final class CoinedName {
    private static final int LONGEST = 40;

    private CoinedName() {
    }

    /** Letters and digits alone; empty where the words have none. @param capital whether it begins with a capital */
    public static String of(String words, boolean capital) {
        String plain = Normalizer.normalize(words, Normalizer.Form.NFD).replaceAll("\\p{M}+", "");
        StringBuilder joined = new StringBuilder();
        for (String word : plain.split("[^A-Za-z0-9]+")) {
            if (!word.isEmpty() && joined.length() + word.length() <= LONGEST) {
                boolean upper = capital || joined.length() > 0;
                joined.append(upper ? word.substring(0, 1).toUpperCase(Locale.ROOT) : word.substring(0, 1).toLowerCase(Locale.ROOT))
                        .append(word.substring(1));
            }
        }
        return joined.toString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Arrays;
import java.util.Optional;

/** The functions of derived values, with how many arguments each takes. */
public enum Function {
    MIN("min", 1, Integer.MAX_VALUE), MAX("max", 1, Integer.MAX_VALUE), ABS("abs", 1, 1),
    /** The first divided by the second. */
    RATIO("ratio", 2, 2),
    /** The first less the second. */
    DIFFERENCE("difference", 2, 2),
    /** 1/(1/a + 1/b + …): resistances side by side, capacitances in a row. */
    PARALLEL("parallel", 2, Integer.MAX_VALUE),
    /** A voltage times a current. */
    POWER("power", 2, 2),
    SUM_OF_SQUARES("sumOfSquares", 1, Integer.MAX_VALUE),
    /** √((a² + b² + …)/n). */
    RMS("rms", 1, Integer.MAX_VALUE),
    SQRT("sqrt", 1, 1),
    /** The level of one voltage or current over another, 20 lg of their ratio (IEC 60027-3). */
    DB("dB", 2, 2),
    /** The level of one power over another, 10 lg of their ratio (IEC 60027-3). */
    DB_OF_POWERS("dBOfPowers", 2, 2);

    private final String words;
    private final int fewest;
    private final int most;

    Function(String words, int fewest, int most) {
        this.words = words;
        this.fewest = fewest;
        this.most = most;
    }

    /** As written in a procedure; letters only, so that a word of the language can be one. */
    public String words() {
        return words;
    }

    public boolean takes(int arguments) {
        return arguments >= fewest && arguments <= most;
    }

    /** Such as {@code 2 values} or {@code 1 value or more}. */
    String arguments() {
        return fewest + (fewest == 1 ? " value" : " values") + (most > fewest ? " or more" : "");
    }

    public static Optional<Function> inWords(String words) {
        return Arrays.stream(values()).filter(function -> function.words.equals(words)).findFirst();
    }
}

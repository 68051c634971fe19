/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A code as it goes on and off in time: as many signals as it says, then the pause by which they are counted. */
final class TimePattern {
    private static final Pattern COUNTED = Pattern.compile("(\\d+) (blinks?|flashes|flash|beeps?|pulses?|clicks?)");
    private static final int MOST = 9;
    private static final String ON = "\u2588";
    private static final String OFF = "\u2581";

    private TimePattern() {
    }

    /** Absent where the words say no number of signals. */
    static Optional<String> of(String code) {
        Matcher counted = COUNTED.matcher(code);
        if (!counted.matches() || counted.group(1).length() > 1 || Integer.parseInt(counted.group(1)) > MOST) {
            return Optional.empty();
        }
        int signals = Integer.parseInt(counted.group(1));
        return Optional.of((OFF + ON).repeat(signals) + OFF.repeat(4));
    }
}

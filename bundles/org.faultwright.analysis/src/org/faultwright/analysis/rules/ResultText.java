/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.regex.Pattern;
import org.faultwright.analysis.faults.ResultWords;

/** How a result is written in a text. */
final class ResultText {
    private static final Pattern LIMIT = Pattern.compile(".*(\\.\\.|\\+|±|^under |^over |^at ).*");

    private ResultText() {
    }

    /** Whether a key can stand as a result: a range of readings cannot. */
    static boolean isWritable(String key) {
        return !LIMIT.matcher(key).matches() && !key.equals("anything else");
    }

    static String written(String key) {
        return ResultWords.written(key);
    }
}

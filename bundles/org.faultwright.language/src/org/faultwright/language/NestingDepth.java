/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

/** Finds where a text nests most deeply. */
final class NestingDepth {
    private NestingDepth() {
    }

    /** The offset of the innermost opening parenthesis; of the longest computation where there are none; else 0. */
    static int deepest(String text) {
        int depth = 0;
        int most = 0;
        int at = Math.max(0, text.indexOf("value"));
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '(') {
                depth++;
                if (depth > most) {
                    most = depth;
                    at = i;
                }
            } else if (c == ')') {
                depth--;
            }
        }
        return at;
    }
}

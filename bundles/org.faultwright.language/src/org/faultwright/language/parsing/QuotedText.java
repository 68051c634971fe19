/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

/** Text between quotation marks. A backslash before a quotation mark or a backslash keeps it as it is. */
public final class QuotedText {
    private QuotedText() {
    }

    /** The text without its quotation marks; the closing one may be missing in a broken text. */
    public static String read(String written) {
        StringBuilder text = new StringBuilder(written.length());
        boolean opened = !written.isEmpty() && PlainSigns.opens(written.charAt(0));
        boolean closed = written.length() > 1 && opened && PlainSigns.closes(written.charAt(written.length() - 1));
        int end = closed ? written.length() - 1 : written.length();
        for (int i = opened ? 1 : 0; i < end; i++) {
            char c = written.charAt(i);
            if (c == '\\' && i + 1 < end) {
                i++;
                text.append(written.charAt(i));
            } else {
                text.append(c);
            }
        }
        return text.toString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/** A text as the language writes it between quotation marks: a backslash stands before a quotation mark and before a backslash. */
public final class Quotation {
    private Quotation() {
    }

    /** In quotation marks, whatever stands in it. */
    public static String of(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    /** The same on one line, without blanks around it: a blank stands where a line ended. */
    public static String onOneLine(String text) {
        return of(text.strip().replaceAll("[\\r\\n]+", " "));
    }
}

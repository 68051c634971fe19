/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

/** Keeps the author's words from reading as Markdown. */
final class Markdown {
    private Markdown() {
    }

    static String plain(String words) {
        return words.replaceAll("\\s+", " ").replaceAll("([\\\\`*_{}\\[\\]<>#|&])", "\\\\$1");
    }

    static String cell(String words) {
        return words.isEmpty() ? " " : plain(words);
    }
}

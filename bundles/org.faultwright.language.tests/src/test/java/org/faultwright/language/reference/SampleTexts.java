/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.reference;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Whole texts that check without an error or warning; every example of the help about the language is a piece of one of them. */
final class SampleTexts {
    static final Path FOLDER = Path.of("src", "test", "resources", "reference");
    private static final Pattern TOKEN = Pattern.compile("\"(?:\\\\.|[^\"\\\\])*\"|//[^\n]*|true-rms|->|\\+/-|\\.\\.|[\\w.]+|\\S");

    private SampleTexts() {
    }

    static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }

    /** Whether the lines stand in one of the texts, however they are laid out. */
    static boolean have(String lines) {
        try {
            return files().stream().map(SampleTexts::read).map(SampleTexts::words).anyMatch(text -> text.contains(words(lines)));
        } catch (IOException unreadable) {
            throw new AssertionError(unreadable);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file).replace("\r\n", "\n");
        } catch (IOException unreadable) {
            throw new AssertionError(unreadable);
        }
    }

    private static String words(String text) {
        return " " + String.join(" ", tokens(text)) + " ";
    }

    /** Words, signs and texts in quotation marks; remarks are left out. */
    static List<String> tokens(String text) {
        return TOKEN.matcher(text).results().map(MatchResult::group).filter(token -> !token.startsWith("//")).toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

/** Makes an author's words fit to be shown: one line, no control characters, nothing that turns the reading direction. */
public final class PlainText {
    /** Stands for what cannot be shown. */
    public static final char STAND_IN = '\uFFFD';

    private PlainText() {
    }

    /** The words on one line; every run of white space and control characters becomes one space. */
    public static String line(String words) {
        StringBuilder line = new StringBuilder(words.length());
        boolean gap = false;
        for (int i = 0; i < words.length();) {
            int character = words.codePointAt(i);
            i += Character.charCount(character);
            if (isGap(character)) {
                gap = true;
            } else if (Character.getType(character) != Character.FORMAT) {
                if (gap && line.length() > 0) {
                    line.append(' ');
                }
                gap = false;
                line.appendCodePoint(isText(character) ? character : STAND_IN);
            }
        }
        return line.toString();
    }

    /** A result word as it is read: {@code stillCharged} becomes {@code still charged}; codes and phrases stay. */
    public static String phrase(String word) {
        StringBuilder split = new StringBuilder(word.length() + 4);
        for (int i = 0; i < word.length(); i++) {
            char c = word.charAt(i);
            boolean hump = i > 0 && Character.isUpperCase(c) && Character.isLowerCase(word.charAt(i - 1));
            boolean abbreviation = i + 1 < word.length() && !Character.isLowerCase(word.charAt(i + 1));
            split.append(hump ? " " : "").append(hump && !abbreviation ? Character.toLowerCase(c) : c);
        }
        return split.toString();
    }

    private static boolean isGap(int character) {
        return Character.isWhitespace(character) || Character.isSpaceChar(character) || Character.isISOControl(character);
    }

    private static boolean isText(int character) {
        // The Unicode standard, 23.7, keeps 66 code points that are never characters.
        boolean nonCharacter = (character & 0xFFFE) == 0xFFFE || character >= 0xFDD0 && character <= 0xFDEF;
        int type = Character.getType(character);
        return !nonCharacter && type != Character.SURROGATE && type != Character.PRIVATE_USE;
    }
}

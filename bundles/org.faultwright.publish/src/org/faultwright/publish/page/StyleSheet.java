/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The style sheets and scripts, which are files of ours and hold no word of a procedure. */
public final class StyleSheet {
    private StyleSheet() {
    }

    /** The sheets named, one behind the other, such as {@code page} and {@code screen}. */
    public static String of(String... names) {
        StringBuilder sheet = new StringBuilder();
        for (String name : names) {
            sheet.append(read(name + ".css"));
        }
        return sheet.toString();
    }

    /** The script of that name, such as {@code search}. */
    public static String script(String name) {
        return read(name + ".js");
    }

    private static String read(String file) {
        try (InputStream in = StyleSheet.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("the file " + file + " is missing from the bundle");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The digest of what a card or tree was made from: the procedure's text and that of every library it uses. */
public final class ContentDigest {
    private ContentDigest() {
    }

    /**
     * SHA-256 over the texts in order, line ends normalised, as 64 hexadecimal digits. A digest quoted in the
     * revision line is left out with its word, so that a text has one digest before and after it states it.
     */
    public static String of(Document document) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            add(sha, document.source());
            document.libraries().forEach(library -> add(sha, library.source()));
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    private static void add(MessageDigest sha, SourceText text) {
        String content = text.content().replace("\r\n", "\n").replaceAll("\\s*\\bdigest\\s+\"[^\"]*\"", "");
        sha.update(content.getBytes(StandardCharsets.UTF_8));
        sha.update((byte) 0);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.mozilla.universalchardet.UniversalDetector;

/**
 * How the bytes of a file are to be read. What is answered always gives the same bytes back when the text is written
 * again, so that a file nobody changed is never changed by saving it.
 */
public final class Encoding {
    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private Encoding() {
    }

    /** UTF-8 where the bytes are valid in it; else what they look like; else a charset that keeps every byte. */
    public static Charset of(byte[] bytes) {
        if (isReadable(bytes, StandardCharsets.UTF_8)) {
            return StandardCharsets.UTF_8;
        }
        return detected(bytes).filter(found -> keeps(bytes, found))
                .orElseGet(() -> keeps(bytes, WINDOWS) ? WINDOWS : StandardCharsets.ISO_8859_1);
    }

    /** The text of a file, without a byte order mark. */
    public static String read(byte[] bytes) {
        String text = new String(bytes, of(bytes));
        return text.startsWith("\ufeff") ? text.substring(1) : text;
    }

    private static Optional<Charset> detected(byte[] bytes) {
        UniversalDetector detector = new UniversalDetector();
        detector.handleData(bytes, 0, bytes.length);
        detector.dataEnd();
        return Optional.ofNullable(detector.getDetectedCharset()).filter(Charset::isSupported).map(Charset::forName)
                .filter(Charset::canEncode);
    }

    private static boolean keeps(byte[] bytes, Charset charset) {
        return isReadable(bytes, charset) && Arrays.equals(new String(bytes, charset).getBytes(charset), bytes);
    }

    private static boolean isReadable(byte[] bytes, Charset charset) {
        try {
            charset.newDecoder().decode(ByteBuffer.wrap(bytes));
            return true;
        } catch (CharacterCodingException other) {
            return false;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;

/**
 * HMAC with SHA-256 (RFC 2104), which nobody can make without the key. The platform's own takes longer to start than a text takes to check.
 */
final class Seal {
    /** In bytes. */
    static final int LENGTH = 32;
    private static final int BLOCK = 64;

    private final byte[] inner = new byte[BLOCK];
    private final byte[] outer = new byte[BLOCK];

    /** @param key of any length */
    Seal(byte[] key) {
        byte[] used = Arrays.copyOf(key.length > BLOCK ? digest().digest(key) : key, BLOCK);
        for (int i = 0; i < BLOCK; i++) {
            inner[i] = (byte) (used[i] ^ 0x36);
            outer[i] = (byte) (used[i] ^ 0x5c);
        }
    }

    /** The seal over these, one after the other. */
    byte[] over(byte[]... parts) {
        MessageDigest first = digest();
        first.update(inner);
        for (byte[] part : parts) {
            first.update(part);
        }
        MessageDigest second = digest();
        second.update(outer);
        return second.digest(first.digest());
    }

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What is found where a picture should be. A path never leads out of the folder of the text, neither by its words nor by a
 * link in the file system; nothing is read but PNG and JPEG of a bounded size.
 */
public final class PictureFile {
    /** In bytes; more makes a card slow to open and to print. */
    public static final int LARGEST = 2_000_000;
    /** In pixels each way. */
    public static final int WIDEST = 8_000;

    private static final Pattern NAME = Pattern.compile("(?:[\\p{L}\\p{N}_][\\p{L}\\p{N} _.-]*/)*[\\p{L}\\p{N}_][\\p{L}\\p{N} _.-]*");
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final int PNG_HEAD = 24;

    private final byte[] bytes;
    private final String mediaType;
    private final String problem;

    private PictureFile(byte[] bytes, String mediaType, String problem) {
        this.bytes = bytes;
        this.mediaType = mediaType;
        this.problem = problem;
    }

    /** Never throws, whatever the name and the file. */
    public static PictureFile of(Picture picture) {
        return of(picture.file().value(), picture.at().source().name());
    }

    /** @param name as written. @param text the name of the text that shows it */
    public static PictureFile of(String name, String text) {
        if (!NAME.matcher(name).matches() || name.contains("..") || !name.toLowerCase(java.util.Locale.ROOT).matches(".*\\.(png|jpe?g)")) {
            return problem("is no name of a picture; write a PNG or JPEG in the folder of the text or one below it, as in pictures/board.png");
        }
        Optional<Path> folder = folder(text);
        if (folder.isEmpty()) {
            return problem("cannot be looked for, since the text has no folder; save the text first");
        }
        try {
            return read(folder.get().toRealPath(), name);
        } catch (IOException | IllegalArgumentException unreadable) {
            return problem("is not in the folder of the text, or cannot be read; put it there or correct the name");
        }
    }

    private static PictureFile read(Path folder, String name) throws IOException {
        Path file = folder.resolve(name).toRealPath();
        if (!file.startsWith(folder)) {
            return problem("leads out of the folder of the text; put the picture itself there");
        }
        if (!Files.isRegularFile(file)) {
            return problem("is no file; name a PNG or JPEG");
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(LARGEST + 1);
        }
        if (bytes.length > LARGEST) {
            return problem("is larger than 2 MB; make it smaller, 1600 pixels wide are enough for print");
        }
        int[] size = isPng(bytes) ? pngSize(bytes) : jpegSize(bytes);
        if (size[0] <= 0 || size[1] <= 0) {
            return problem("is no PNG or JPEG, whatever its name says; save the picture anew as one of these");
        }
        return Math.max(size[0], size[1]) > WIDEST ? problem("is more than 8000 pixels wide or high; make it smaller")
                : new PictureFile(bytes, isPng(bytes) ? "image/png" : "image/jpeg", "");
    }

    private static Optional<Path> folder(String text) {
        try {
            Path file = text.startsWith("file:") ? Path.of(URI.create(text)) : Path.of(text);
            return Optional.ofNullable(file.toAbsolutePath().normalize().getParent()).filter(Files::isDirectory);
        } catch (IllegalArgumentException | FileSystemNotFoundException noPath) {
            return Optional.empty();
        }
    }

    private static PictureFile problem(String problem) {
        return new PictureFile(new byte[0], "", problem);
    }

    private static boolean isPng(byte[] bytes) {
        return bytes.length >= PNG_HEAD && Arrays.equals(PNG, Arrays.copyOf(bytes, PNG.length));
    }

    private static int[] pngSize(byte[] bytes) {
        return new int[] {four(bytes, 16), four(bytes, 20)};
    }

    /** From the first frame header, ISO/IEC 10918-1, B.2.2; none where there is no such. */
    private static int[] jpegSize(byte[] bytes) {
        int at = bytes.length > 3 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xD8 ? 2 : bytes.length;
        while (at + 8 < bytes.length && (bytes[at] & 0xFF) == 0xFF) {
            int marker = bytes[at + 1] & 0xFF;
            boolean frame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
            if (frame) {
                return new int[] {two(bytes, at + 7), two(bytes, at + 5)};
            }
            at += marker == 0xFF ? 1 : 2 + Math.max(2, two(bytes, at + 2));
        }
        return new int[] {0, 0};
    }

    private static int two(byte[] bytes, int at) {
        return at + 1 < bytes.length ? (bytes[at] & 0xFF) << 8 | bytes[at + 1] & 0xFF : 0;
    }

    private static int four(byte[] bytes, int at) {
        return two(bytes, at) << 16 | two(bytes, at + 2);
    }

    /** What is wrong with it, to stand behind its name; absent where it can be shown. */
    public Optional<String> problem() {
        return problem.isEmpty() ? Optional.empty() : Optional.of(problem);
    }

    /** The whole picture as an address that fetches nothing (RFC 2397); only of one without a problem. */
    public String asAddress() {
        return "data:" + mediaType + ";base64," + Base64.getEncoder().encodeToString(bytes);
    }

    /** SHA-256 in hexadecimal. */
    public String digest() {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

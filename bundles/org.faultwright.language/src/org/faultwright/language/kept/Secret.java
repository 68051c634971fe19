/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** The key that kept results are sealed with: a file of its own, away from them, that its owner alone may read. */
final class Secret {
    /** In bytes. */
    static final int LENGTH = 32;
    private static final Set<PosixFilePermission> OWNER = EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

    private Secret() {
    }

    /** The key in a file, made anew where there is none or it is damaged; absent where it would not be secret, or cannot be written. */
    static Optional<byte[]> in(Path file) {
        try {
            Optional<byte[]> known = read(file);
            if (known.isEmpty()) {
                make(file);
            }
            return known.or(() -> quietly(file));
        } catch (IOException | SecurityException | UnsupportedOperationException refused) {
            return Optional.empty();
        }
    }

    private static Optional<byte[]> quietly(Path file) {
        try {
            return read(file);
        } catch (IOException refused) {
            return Optional.empty();
        }
    }

    /** @throws IOException where others may read or have put there what stands at its place */
    private static Optional<byte[]> read(Path file) throws IOException {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || !isOwn(file)) {
            throw new IOException("not a file of this user alone");
        }
        byte[] bytes = Files.readAllBytes(file);
        return bytes.length == LENGTH ? Optional.of(bytes) : Optional.empty();
    }

    /** Whether whoever makes a file here is its owner, and nobody else may read it. */
    private static boolean isOwn(Path file) throws IOException {
        if (!isPosix(file)) {
            return true;
        }
        Path trial = Files.createTempFile(file.getParent(), ".owner-", ".part");
        try {
            return OWNER.containsAll(Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS))
                    && Files.getOwner(trial).equals(Files.getOwner(file, LinkOption.NOFOLLOW_LINKS));
        } finally {
            Files.deleteIfExists(trial);
        }
    }

    /** Whole or not at all; of two programs that make one at the same time, the later one's counts for both from the next start on. */
    private static void make(Path file) throws IOException {
        byte[] key = new byte[LENGTH];
        new SecureRandom().nextBytes(key);
        OwnFolder.make(file.getParent());
        Path part = Files.createTempFile(file.getParent(), ".key-", ".part");
        try {
            if (isPosix(part)) {
                Files.setPosixFilePermissions(part, PosixFilePermissions.fromString("rw-------"));
            }
            Files.write(part, key);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static boolean isPosix(Path file) {
        return file.getFileSystem().supportedFileAttributeViews().contains("posix");
    }
}

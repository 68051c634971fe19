/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * A folder of sealed entries, one file each. Whatever is wrong with it, from a disk that is full to a file that somebody has changed, an entry
 * is then simply not there. Programs may share it: an entry is written beside its place and put there whole.
 */
final class KeptFolder {
    /** What an entry may have at most, in bytes; more is not kept, and nothing longer is read. */
    static final int LARGEST_ENTRY = 2_000_000;
    private static final byte[] BEGINNING = {'F', 'W', 'k', '1'};
    private static final String ENDING = ".kept";
    private static final Duration UNUSED = Duration.ofDays(60);
    private static final Duration BETWEEN_SWEEPS = Duration.ofDays(1);
    private static final int MANY = 500;

    private final Path folder;
    private final Seal seal;
    private final long mostBytes;
    private final AtomicInteger written = new AtomicInteger();

    /** @param mostBytes how much all entries may have together after a {@link #sweep} */
    KeptFolder(Path folder, byte[] secret, long mostBytes) {
        this.folder = folder;
        this.seal = new Seal(secret);
        this.mostBytes = mostBytes;
    }

    /** What was kept under a key; absent where nothing was, or not by whoever knows the secret, or not whole. */
    Optional<byte[]> read(byte[] key) {
        Path file = file(key);
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(LARGEST_ENTRY);
            int head = BEGINNING.length + Seal.LENGTH;
            if (bytes.length < head || !Arrays.equals(bytes, 0, BEGINNING.length, BEGINNING, 0, BEGINNING.length)) {
                return Optional.empty();
            }
            byte[] content = Arrays.copyOfRange(bytes, head, bytes.length);
            if (!java.security.MessageDigest.isEqual(Arrays.copyOfRange(bytes, BEGINNING.length, head), seal.over(key, content))) {
                return Optional.empty();
            }
            used(file);
            return Optional.of(content);
        } catch (IOException | SecurityException none) {
            return Optional.empty();
        }
    }

    /** Those that are used stay, but telling so once a day is enough. */
    private static void used(Path file) throws IOException {
        Instant now = Instant.now();
        if (Files.getLastModifiedTime(file).toInstant().isBefore(now.minus(BETWEEN_SWEEPS))) {
            Files.setLastModifiedTime(file, FileTime.from(now));
        }
    }

    /** Keeps it if that can be done. */
    void write(byte[] key, byte[] content) {
        if (content.length > LARGEST_ENTRY - BEGINNING.length - Seal.LENGTH) {
            return;
        }
        try {
            OwnFolder.make(folder);
            Path part = Files.createTempFile(folder, ".", ".part");
            try {
                byte[] bytes = Arrays.copyOf(BEGINNING, BEGINNING.length + Seal.LENGTH + content.length);
                System.arraycopy(seal.over(key, content), 0, bytes, BEGINNING.length, Seal.LENGTH);
                System.arraycopy(content, 0, bytes, BEGINNING.length + Seal.LENGTH, content.length);
                Files.write(part, bytes);
                Files.move(part, file(key), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
                written.incrementAndGet();
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException | SecurityException refused) {
            // it is found again by the rules
            return;
        }
    }

    private Path file(byte[] key) {
        return folder.resolve(HexFormat.of().formatHex(key) + ENDING);
    }

    private record Entry(Path file, long size, Instant used) {
    }

    /** Takes off what nobody has used for two months, and of the rest the oldest until there is room; once a day, or after many were written. */
    void sweep() {
        Path mark = folder.resolve("swept");
        try {
            if (written.get() == 0 || written.get() < MANY && Files.exists(mark)
                    && Files.getLastModifiedTime(mark).toInstant().isAfter(Instant.now().minus(BETWEEN_SWEEPS))) {
                return;
            }
            written.set(0);
            // never through a link, which would empty the file that it leads to
            Files.write(mark, new byte[0], StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING, LinkOption.NOFOLLOW_LINKS);
            Files.setLastModifiedTime(mark, FileTime.from(Instant.now()));
            takeOff(entries());
        } catch (IOException | SecurityException refused) {
            return;
        }
    }

    private void takeOff(List<Entry> entries) throws IOException {
        Instant old = Instant.now().minus(UNUSED);
        long left = entries.stream().mapToLong(Entry::size).sum();
        entries.sort(Comparator.comparing(Entry::used));
        for (Entry entry : entries) {
            boolean part = !entry.file().toString().endsWith(ENDING);
            boolean leftOver = part && entry.used().isBefore(Instant.now().minus(BETWEEN_SWEEPS));
            if (leftOver || !part && (left > mostBytes || entry.used().isBefore(old))) {
                Files.deleteIfExists(entry.file());
                left -= entry.size();
            }
        }
    }

    /** Nothing but what this class wrote. */
    private List<Entry> entries() throws IOException {
        List<Entry> entries = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder)) {
            for (Path file : (Iterable<Path>) all.filter(one -> one.getFileName().toString().matches("[0-9a-f]{64}\\.kept|\\.\\d+\\.part"))::iterator) {
                try {
                    BasicFileAttributes about = Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
                    entries.add(new Entry(file, about.size(), about.lastModifiedTime().toInstant()));
                } catch (IOException takenOffByAnother) {
                    continue;
                }
            }
        }
        return entries;
    }
}

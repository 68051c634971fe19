/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    @TempDir
    Path folder;

    private static PublishedFiles published(String content) {
        return new PublishedFiles("Card.pdf", "application/pdf", content.getBytes());
    }

    private List<String> files(Path in) throws IOException {
        try (Stream<Path> all = Files.list(in)) {
            return all.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void should_write_into_a_folder_that_it_makes() throws Exception {
        Path target = WholeFile.write(folder.resolve("a/b"), published("one"));
        assertEquals(folder.resolve("a/b/Card.pdf"), target);
        assertArrayEquals("one".getBytes(), Files.readAllBytes(target));
        assertEquals(List.of("Card.pdf"), files(target.getParent()));
    }

    @Test
    void should_replace_what_was_there() throws Exception {
        WholeFile.write(folder, published("a long first version"));
        WholeFile.write(folder, published("two"));
        assertEquals("two", Files.readString(folder.resolve("Card.pdf")));
        assertEquals(List.of("Card.pdf"), files(folder));
    }

    @Test
    void should_say_that_a_file_is_in_the_way_of_the_folder() throws Exception {
        Path file = Files.writeString(folder.resolve("cards"), "no folder");
        PublishingRefused refused = assertThrows(PublishingRefused.class, () -> WholeFile.write(file, published("x")));
        assertEquals("Cannot write Card.pdf into the folder " + file + " (a file of that name is in the way):"
                + " choose a folder that you may write to.", refused.getMessage());
        assertEquals("no folder", Files.readString(file));
    }

    @Test
    void should_leave_nothing_behind_when_the_target_cannot_be_replaced() throws Exception {
        // A folder with something in it stands where the file should go, for whoever runs this test.
        Files.createDirectories(folder.resolve("Card.pdf/inside"));
        PublishingRefused refused = assertThrows(PublishingRefused.class, () -> WholeFile.write(folder, published("x")));
        assertTrue(refused.getMessage().startsWith("Cannot write Card.pdf into the folder " + folder), refused.getMessage());
        assertEquals(1, refused.getMessage().lines().count());
        assertEquals(List.of("Card.pdf"), files(folder));
        assertTrue(Files.isDirectory(folder.resolve("Card.pdf/inside")));
    }

    /** A new text lies in a folder that others work in, too: it is theirs to read. */
    @Test
    void should_make_a_file_that_others_may_read_and_never_write_over_one() throws Exception {
        Path target = folder.resolve("a/New.procedure");
        WholeFile.create(target, "one");
        assertEquals("one", Files.readString(target));
        assertEquals("rw-r--r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(target)));

        assertThrows(FileAlreadyExistsException.class, () -> WholeFile.create(target, "two"));
        assertEquals("one", Files.readString(target));
        assertEquals(List.of("New.procedure"), files(target.getParent()));
    }
}

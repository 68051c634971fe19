/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures beside a text: what is shown and what is refused. The pictures are written by the Java platform's own coder. */
class PictureFileTest {
    @TempDir
    private Path outside;
    private Path folder;

    @BeforeEach
    void lay() throws IOException {
        folder = Files.createDirectories(outside.resolve("bench/pictures")).getParent();
        Files.write(outside.resolve("secret.png"), picture("png", 2, 2));
        Files.write(folder.resolve("board.png"), picture("png", 30, 20));
        Files.write(folder.resolve("pictures/top side.jpg"), picture("jpg", 30, 20));
    }

    @ParameterizedTest
    @ValueSource(strings = {"board.png", "pictures/top side.jpg"})
    void should_find_a_picture_beside_the_text_and_below(String name) {
        PictureFile found = find(name);

        assertEquals(Optional.empty(), found.problem());
        assertTrue(found.asAddress().startsWith(name.endsWith("png") ? "data:image/png;base64," : "data:image/jpeg;base64,"));
        assertEquals(64, found.digest().length());
    }

    @ParameterizedTest
    @ValueSource(strings = {"../secret.png", "pictures/../../secret.png", "/etc/passwd", "/tmp/a.png", "..\\secret.png", "C:\\a.png", "C:a.png",
            "file:///etc/a.png", "http://example.org/a.png", "~/a.png", "", "a\u0000.png", "board.svg", "board.png/../../secret.png", ".png",
            "//server/share/a.png", "%2e%2e/secret.png", "board.png\n"})
    void should_never_follow_a_name_out_of_the_folder(String name) {
        assertTrue(find(name).problem().isPresent());
    }

    @Test
    void should_never_follow_a_link_out_of_the_folder() throws IOException {
        Files.createSymbolicLink(folder.resolve("link.png"), outside.resolve("secret.png"));
        Files.createSymbolicLink(folder.resolve("away"), outside);

        assertTrue(find("link.png").problem().get().contains("leads out of the folder"));
        assertTrue(find("away/secret.png").problem().get().contains("leads out of the folder"));
    }

    @Test
    void should_say_what_is_wrong_with_the_file() throws IOException {
        Files.writeString(folder.resolve("text.png"), "<svg onload='x'>");
        Files.write(folder.resolve("cut.jpg"), new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF});
        Files.write(folder.resolve("large.png"), new byte[PictureFile.LARGEST + 1]);
        Files.write(folder.resolve("wide.png"), picture("png", PictureFile.WIDEST + 1, 1));
        Files.createDirectory(folder.resolve("folder.png"));

        assertTrue(find("missing.png").problem().get().contains("is not in the folder of the text"));
        assertTrue(find("text.png").problem().get().contains("is no PNG or JPEG"));
        assertTrue(find("cut.jpg").problem().get().contains("is no PNG or JPEG"));
        assertTrue(find("large.png").problem().get().contains("larger than 2 MB"));
        assertTrue(find("wide.png").problem().get().contains("8000 pixels"));
        assertTrue(find("folder.png").problem().get().contains("is no file"));
    }

    private PictureFile find(String name) {
        SourceRange at = new SourceRange(new SourceText(folder.resolve("Text.procedure").toString(), "x"), 0, 1);
        return PictureFile.of(new Picture(new Written<>(name, at), "", at));
    }

    private static byte[] picture(String format, int width, int height) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), format, bytes);
        return bytes.toByteArray();
    }
}

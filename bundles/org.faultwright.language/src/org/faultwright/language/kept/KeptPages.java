/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Pages that an account may look at in a browser, in its folder for what can be made anew. A page is written once and stays until another build of the
 * program has other words for it. Programs may share the folder: a page is written beside its place and put there whole.
 */
public final class KeptPages {
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,80}\\.html");

    private final Optional<Path> folder;

    /** @param folder made when the first page is written; absent where nothing may be written */
    public KeptPages(Optional<Path> folder) {
        this.folder = folder;
    }

    /** In the user's own folder: {@code $XDG_CACHE_HOME/faultwright/rules}, or the same in {@code ~/.cache}; on Windows in {@code %LOCALAPPDATA%}. */
    public static KeptPages ofTheUser() {
        return new KeptPages(UserFolders.cache().map(cache -> cache.resolve("rules")));
    }

    /**
     * Where the page stands, with these words in it; absent where that cannot be done.
     *
     * @param name of its file, in small letters, digits and hyphens: {@code unknown-name.html}
     */
    public Optional<Path> write(String name, String html) {
        if (folder.isEmpty() || !NAME.matcher(name).matches()) {
            return Optional.empty();
        }
        try {
            Path file = folder.get().resolve(name);
            byte[] bytes = html.getBytes(StandardCharsets.UTF_8);
            if (!says(file, bytes)) {
                replace(file, bytes);
            }
            return Optional.of(file);
        } catch (IOException | SecurityException refused) {
            return Optional.empty();
        }
    }

    private static boolean says(Path file, byte[] bytes) throws IOException {
        return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.size(file) == bytes.length && Arrays.equals(Files.readAllBytes(file), bytes);
    }

    private static void replace(Path file, byte[] bytes) throws IOException {
        OwnFolder.make(file.getParent());
        Path part = Files.createTempFile(file.getParent(), ".", ".part");
        try {
            Files.write(part, bytes);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.publish.PublishingRefused;

/** The trees that were published with the last release, by the names of their procedures. */
public final class EarlierRelease {
    private static final String TREE = ".tree.json";

    private final Map<String, EarlierTree> trees = new LinkedHashMap<>();

    private EarlierRelease() {
    }

    public static EarlierRelease of(List<EarlierTree> trees) throws PublishingRefused {
        EarlierRelease release = new EarlierRelease();
        for (EarlierTree tree : trees) {
            EarlierTree other = release.trees.putIfAbsent(tree.procedure(), tree);
            if (other != null) {
                throw new PublishingRefused(other.file() + " and " + tree.file() + " are both trees of "
                        + tree.procedure() + ": keep the one that was released.");
            }
        }
        return release;
    }

    /**
     * Reads every tree of a folder, or one tree.
     *
     * @throws PublishingRefused with one sentence where there is none, or one cannot be read
     */
    public static EarlierRelease in(Path place) throws PublishingRefused {
        try {
            if (Files.isRegularFile(place)) {
                return of(List.of(read(place)));
            }
            if (!Files.isDirectory(place)) {
                throw new PublishingRefused("There is no " + place
                        + " to compare with: name the folder that the last release was published into.");
            }
            List<Path> files;
            try (Stream<Path> all = Files.list(place)) {
                files = all.filter(file -> file.getFileName().toString().endsWith(TREE)).sorted().toList();
            }
            if (files.isEmpty()) {
                throw new PublishingRefused(place + " holds no tree (a file ending in " + TREE
                        + "): name the folder that the last release was published into.");
            }
            List<EarlierTree> trees = new ArrayList<>();
            for (Path file : files) {
                trees.add(read(file));
            }
            return of(trees);
        } catch (IOException unreadable) {
            throw new PublishingRefused(place + " cannot be read (" + unreadable.getMessage()
                    + "): name a folder that you may read.", unreadable);
        }
    }

    private static EarlierTree read(Path file) throws IOException, PublishingRefused {
        try {
            return EarlierTree.read(file.toString(), StandardCharsets.UTF_8.newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file))).toString());
        } catch (CharacterCodingException notText) {
            throw new PublishingRefused(file + " is not text in UTF-8, so that nothing can be held against it:"
                    + " name an unchanged tree, as it was published.", notText);
        }
    }

    public Optional<EarlierTree> of(String procedure) {
        return Optional.ofNullable(trees.get(procedure));
    }

    public List<EarlierTree> trees() {
        return List.copyOf(trees.values());
    }
}

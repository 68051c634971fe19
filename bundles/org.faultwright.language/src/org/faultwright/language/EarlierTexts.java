/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;

/**
 * The procedures of an earlier release or folder, for a comparison. Of a published tree it is the text that was published with it,
 * which must have the digest that the tree states.
 */
public final class EarlierTexts {
    private static final String TREE = ".tree.json";
    private static final Pattern DIGEST = Pattern.compile("\"digest\"\\s*:\\s*\"sha256:([0-9a-f]{64})\"");
    private static final Pattern FIRST_WORD = Pattern.compile("(?s)\\uFEFF?(?:\\s+|//[^\\n]*+|/\\*.*?\\*/)*+procedure\\b");
    /** What is asked of a tree stands in its first lines. */
    private static final int HEAD_OF_A_TREE = 16_384;

    private EarlierTexts() {
    }

    /** Why there is nothing to compare with, in one sentence for the user. */
    public static final class Unusable extends Exception {
        private static final long serialVersionUID = 1L;

        public Unusable(String sentence) {
            super(sentence);
        }
    }

    /**
     * @param place a text, a published tree, or a folder
     * @throws Unusable where there is no procedure, or one cannot be read
     */
    public static List<Procedure> in(Path place) throws Unusable {
        List<Procedure> procedures = read(place);
        for (Procedure procedure : procedures) {
            refuseUnread(procedure);
        }
        return procedures;
    }

    /**
     * The one that a procedure of today is compared with: of a folder that of its name, of a text that text, whatever its name.
     *
     * @throws Unusable where there is none, or it cannot be read; other damaged texts of a folder count for nothing
     */
    public static Procedure of(String name, Path place) throws Unusable {
        List<Procedure> all = read(place);
        List<Procedure> like = Files.isDirectory(place) ? all.stream().filter(one -> one.name().text().equals(name)).toList() : all;
        if (like.size() > 1) {
            throw new Unusable(like.get(0).source().name() + " and " + like.get(1).source().name() + " are both texts of \"" + name
                    + "\": keep the one that was released.");
        }
        if (like.isEmpty()) {
            for (Procedure other : all) {
                refuseUnread(other);
            }
            throw new Unusable("\"" + place + "\" holds no text of \"" + name + "\": it is new since then, or had another name.");
        }
        refuseUnread(like.get(0));
        return like.get(0);
    }

    private static List<Procedure> read(Path place) throws Unusable {
        if (!Files.exists(place)) {
            throw new Unusable("There is no \"" + place + "\" to compare with; name a text, or the folder that the last release was"
                    + " published into.");
        }
        boolean tree = Files.isRegularFile(place) && place.toString().endsWith(TREE);
        List<Procedure> procedures;
        try {
            procedures = tree ? List.of(textOf(place)) : ReleasedTexts.in(place);
        } catch (IOException unreadable) {
            throw new Unusable("\"" + place + "\" cannot be read (" + unreadable.getMessage() + "); name one that you may read.");
        }
        if (procedures.isEmpty()) {
            throw new Unusable("\"" + place + "\" holds no procedure (a text ending in .procedure.txt or .procedure); name a text, or the"
                    + " folder that the last release was published into.");
        }
        return procedures;
    }

    /** A library that is missing would count as one without any notes, limits and tests. */
    private static void refuseUnread(Procedure procedure) throws Unusable {
        if (!isProcedure(procedure.source().content())) {
            throw new Unusable("\"" + procedure.source().name() + "\" is no procedure; name a text, or the folder that the last release was published into.");
        }
        Set<String> there = procedure.libraries().stream().map(library -> library.name().text()).collect(Collectors.toSet());
        Optional<Name> missing = Stream.concat(procedure.uses().stream(), procedure.libraries().stream().flatMap(library -> library.uses().stream()))
                .filter(used -> !there.contains(used.text())).findFirst();
        if (missing.isPresent()) {
            throw new Unusable("\"" + procedure.source().name() + "\" uses the library " + missing.get() + ", and it is not there: what it said could not be compared. Put it beside"
                    + " the text, as it was published.");
        }
        if (procedure.steps().isEmpty() && !procedure.problems().isEmpty()) {
            throw new Unusable("\"" + procedure.source().name() + "\" cannot be read as a procedure; name an unchanged text, as it"
                    + " was published.");
        }
    }

    /** Its first word, behind comments, says what a text is. */
    private static boolean isProcedure(String text) {
        return FIRST_WORD.matcher(text).lookingAt();
    }

    private static Procedure textOf(Path tree) throws IOException, Unusable {
        String head;
        try (var bytes = Files.newInputStream(tree)) {
            head = new String(bytes.readNBytes(HEAD_OF_A_TREE), StandardCharsets.UTF_8);
        }
        Matcher digest = DIGEST.matcher(head);
        if (!digest.find()) {
            throw new Unusable("\"" + tree + "\" is no tree of a procedure; name one as it was published, or its text.");
        }
        String name = tree.getFileName().toString();
        Path text = tree.resolveSibling(name.substring(0, name.length() - TREE.length()) + ReleasedTexts.PUBLISHED);
        if (!Files.isRegularFile(text)) {
            throw new Unusable("A tree is compared by the text that was published with it, and \"" + text + "\" is not there; publish"
                    + " with the text, or name another one.");
        }
        Optional<Procedure> procedure = ReleasedTexts.in(text).stream().findFirst();
        if (procedure.filter(one -> ContentDigest.of(one).equals(digest.group(1))).isEmpty()) {
            throw new Unusable("\"" + text + "\" is not the text that \"" + name + "\" was made from: their digests differ; name the text"
                    + " of that release.");
        }
        return procedure.get();
    }
}

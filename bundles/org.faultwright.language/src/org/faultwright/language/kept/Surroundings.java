/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.WeakHashMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.language.LibraryFinder;
import org.faultwright.language.LibraryLookup;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.PictureFile;
import org.faultwright.procedure.SourceText;

/**
 * What a text was read with besides its own words: each library that was looked for, with what it said or that there was none, and each picture,
 * with what is wrong with its file. Texts are numbered in the order in which they were found; 0 is the text itself.
 *
 * @param found one for each text that was found, from number 1 on
 */
record Surroundings(List<Asked> asked, List<Found> found, List<Shown> pictures) {
    private static final int NONE = -1;
    private static final int DIGEST = 32;
    /** A library is asked for by many texts. It is not equal to another one of the same words, so that this is by the very object. */
    private static final Map<SourceText, byte[]> KNOWN = new WeakHashMap<>();

    /** @param from the number of the text that uses it. @param found the number of its text, or {@link #NONE} */
    private record Asked(String library, int from, int found) {
    }

    /** @param problem what is wrong with it; empty where it can be shown */
    private record Shown(int text, String name, String problem) {
    }

    /** @param library whether it can be read as one */
    private record Found(byte[] digest, boolean library) {
    }

    /** The same with the texts, as they were read. */
    record Seen(Surroundings surroundings, List<SourceText> texts) {
    }

    /** @return absent where a library changed while it was read, so that it was read in two ways */
    static Optional<Seen> of(Document document, List<LibraryLookup> lookups) {
        List<SourceText> texts = new ArrayList<>(List.of(document.source()));
        List<Asked> asked = new ArrayList<>();
        for (LibraryLookup lookup : lookups) {
            int from = number(lookup.fromFile(), texts);
            int number = NONE;
            if (lookup.found().isPresent()) {
                SourceText text = lookup.found().get();
                number = number(text.name(), texts);
                if (number == NONE) {
                    number = texts.size();
                    texts.add(text);
                } else if (!texts.get(number).content().equals(text.content())) {
                    return Optional.empty();
                }
            }
            asked.add(new Asked(lookup.library(), from, number));
        }
        List<Shown> pictures = new ArrayList<>();
        for (Picture picture : Picture.in(document).toList()) {
            int text = number(picture.at().source().name(), texts);
            if (text == NONE) {
                return Optional.empty();
            }
            pictures.add(new Shown(text, picture.file().value(), problem(picture.file().value(), texts.get(text))));
        }
        Set<String> libraries = document.libraries().stream().map(library -> library.source().name()).collect(Collectors.toSet());
        List<Found> found = texts.stream().skip(1).map(text -> new Found(digest(text), libraries.contains(text.name()))).toList();
        return Optional.of(new Seen(new Surroundings(asked, found, pictures), List.copyOf(texts)));
    }

    private static int number(String name, List<SourceText> texts) {
        for (int i = 0; i < texts.size(); i++) {
            if (texts.get(i).name().equals(name)) {
                return i;
            }
        }
        return NONE;
    }

    /** The texts by their numbers where everything is as it was; absent where anything is otherwise. */
    Optional<List<SourceText>> asNow(SourceText own, LibraryFinder finder) {
        List<SourceText> texts = new ArrayList<>(List.of(own));
        for (Asked one : asked) {
            if (one.from() < 0 || one.from() >= texts.size()) {
                return Optional.empty();
            }
            Optional<SourceText> now = finder.find(one.library(), texts.get(one.from()).name());
            if (now.isPresent() != (one.found() != NONE) || now.isPresent() && !isSame(now.get(), one.found(), texts)) {
                return Optional.empty();
            }
        }
        boolean same = texts.size() == found.size() + 1 && pictures.stream().allMatch(picture -> picture.text() >= 0
                && picture.text() < texts.size() && problem(picture.name(), texts.get(picture.text())).equals(picture.problem()));
        return same ? Optional.of(texts) : Optional.empty();
    }

    /** Whether a text is the one of that number; it is put there when it is the next. */
    private boolean isSame(SourceText now, int number, List<SourceText> texts) {
        if (number >= 0 && number < texts.size()) {
            return texts.get(number).name().equals(now.name()) && texts.get(number).content().equals(now.content());
        }
        boolean same = number == texts.size() && number <= found.size() && number(now.name(), texts) == NONE
                && Arrays.equals(digest(now), found.get(number - 1).digest());
        return same && texts.add(now);
    }

    /** The names of the libraries among the texts, nearest first. */
    List<String> libraries(List<SourceText> texts) {
        return IntStream.range(0, found.size()).filter(i -> found.get(i).library()).mapToObj(i -> texts.get(i + 1).name()).toList();
    }

    private static String problem(String picture, SourceText text) {
        return PictureFile.of(picture, text.name()).problem().orElse("");
    }

    /** Of what a text says. */
    static byte[] digest(SourceText text) {
        synchronized (KNOWN) {
            return KNOWN.computeIfAbsent(text, one -> Seal.digest().digest(one.content().getBytes(StandardCharsets.UTF_8)));
        }
    }

    void write(DataOutputStream out) throws IOException {
        out.writeInt(asked.size());
        for (Asked one : asked) {
            Entry.write(one.library(), out);
            out.writeInt(one.from());
            out.writeInt(one.found());
        }
        out.writeInt(found.size());
        for (Found one : found) {
            out.write(one.digest());
            out.writeBoolean(one.library());
        }
        out.writeInt(pictures.size());
        for (Shown picture : pictures) {
            out.writeInt(picture.text());
            Entry.write(picture.name(), out);
            Entry.write(picture.problem(), out);
        }
    }

    static Surroundings read(DataInputStream in) throws IOException {
        List<Asked> asked = new ArrayList<>();
        for (int left = Entry.count(in); left > 0; left--) {
            asked.add(new Asked(Entry.string(in), in.readInt(), in.readInt()));
        }
        List<Found> found = new ArrayList<>();
        for (int left = Entry.count(in); left > 0; left--) {
            found.add(new Found(in.readNBytes(DIGEST), in.readBoolean()));
        }
        List<Shown> pictures = new ArrayList<>();
        for (int left = Entry.count(in); left > 0; left--) {
            pictures.add(new Shown(in.readInt(), Entry.string(in), Entry.string(in)));
        }
        return new Surroundings(asked, found, pictures);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.analysis.Finding;
import org.faultwright.language.LibraryFinder;
import org.faultwright.language.LibraryLookup;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/**
 * Keeps what was found in a text from one run of the program to the next, for one way of checking.
 *
 * <p>It is given back only where everything that it depends on is as it was: the text and its place, each library that was looked for, each
 * picture, the day as far as a text speaks of one, the rules that were run, and the program itself. An entry bears a seal that only this user's
 * key makes; one that is damaged, or was put there by somebody without the key, counts as none. What is published never comes from here.
 *
 * <p>Nothing here fails: where it cannot be kept it is found again. May be shared between threads.
 */
public final class KeptResults {
    /** How much all entries may have together. */
    private static final long MOST_BYTES = 128_000_000;
    /** Rules stopped with it; nothing that it leaves is complete. */
    private static final String FAILED = "rule-failed";

    private final Optional<KeptFolder> folder;
    private final byte[] program;
    private final String way;
    private final Optional<LocalDate> today;
    private final LibraryFinder finder;

    private KeptResults(Class<?> user, Optional<KeptFolder> folder, String way, Optional<LocalDate> today, LibraryFinder finder) {
        Optional<byte[]> print = folder.flatMap(kept -> ProgramPrint.with(user));
        this.program = print.orElse(new byte[0]);
        this.folder = print.isPresent() ? folder : Optional.empty();
        this.way = way;
        this.today = today;
        this.finder = finder;
    }

    /** What was found, and the libraries that the text was read with, as their names. */
    public record Answer(List<Finding> findings, List<String> libraries) {
    }

    /**
     * In the user's folders for such things ({@link UserFolders}): the key stands where what is not to be lost stands.
     *
     * @param user   a class of the program that asks: what another build of it kept counts as none
     * @param way    a word for what is run: other rules, or other work with what they find, need another word
     * @param today  the day that due dates are held against
     * @param finder the one that the texts are read with
     */
    public static KeptResults usual(Class<?> user, String way, Optional<LocalDate> today, LibraryFinder finder) {
        Optional<Path> entries = UserFolders.cache().map(place -> place.resolve("kept"));
        Optional<Path> key = UserFolders.state().map(place -> place.resolve("kept-results.key"));
        return entries.isPresent() && key.isPresent() ? in(user, entries.get(), key.get(), way, today, finder) : none();
    }

    /** In a folder and with a key of one's own. */
    public static KeptResults in(Class<?> user, Path entries, Path key, String way, Optional<LocalDate> today, LibraryFinder finder) {
        return new KeptResults(user, Secret.in(key).map(secret -> new KeptFolder(entries, secret, MOST_BYTES)), way, today, finder);
    }

    /** Nothing is kept. */
    public static KeptResults none() {
        return new KeptResults(KeptResults.class, Optional.empty(), "", Optional.empty(), (library, from) -> Optional.empty());
    }

    /** What was found in the text before, if the same would be found today; its places are in these texts as they are now. */
    public Optional<Answer> of(SourceText text) {
        return folder.flatMap(kept -> kept.read(key(text))).flatMap(bytes -> answer(bytes, text));
    }

    private Optional<Answer> answer(byte[] bytes, SourceText text) {
        try {
            Entry entry = Entry.of(bytes);
            if (entry.days().isPresent() != today.isPresent() || today.filter(day -> !entry.days().get().holds(day)).isPresent()) {
                return Optional.empty();
            }
            return entry.surroundings().asNow(text, finder).map(texts -> new Answer(
                    entry.found().stream().map(then -> then.in(texts)).toList(),
                    entry.surroundings().libraries(texts)));
        } catch (IOException | IllegalArgumentException damaged) {
            return Optional.empty();
        }
    }

    /**
     * Reads and checks a text, and keeps what was found.
     *
     * @param reader one that uses the same finder
     * @param check  what is found in a document that was read from it
     */
    public Answer anew(SourceText text, ProcedureReader reader, Function<Document, List<Finding>> check) {
        List<LibraryLookup> looked = new ArrayList<>();
        Document document = reader.read(text, looked::add);
        Optional<Surroundings.Seen> before = folder.isEmpty() ? Optional.empty() : Surroundings.of(document, looked);
        List<Finding> found = check.apply(document);
        before.ifPresent(seen -> keep(text, seen, found));
        return new Answer(found, document.libraries().stream().map(library -> library.source().name()).toList());
    }

    /** Unless something changed while the rules ran, or one of them stopped. */
    private void keep(SourceText text, Surroundings.Seen seen, List<Finding> found) {
        boolean whole = found.stream().noneMatch(finding -> finding.rule().equals(FAILED));
        if (!whole || seen.surroundings().asNow(text, finder).isEmpty()) {
            return;
        }
        try {
            Optional<ValidDays> days = today.map(day -> ValidDays.about(day, seen.texts(), found));
            folder.orElseThrow().write(key(text), Entry.bytes(seen.surroundings(), days, found, seen.texts()));
        } catch (IllegalArgumentException elsewhere) {
            // a finding in a text of which is not known what it depends on: found again the next time
            return;
        }
    }

    /** Makes room where much was kept; for the end of a run. */
    public void sweep() {
        folder.ifPresent(KeptFolder::sweep);
    }

    private byte[] key(SourceText text) {
        MessageDigest key = Seal.digest();
        key.update(program);
        add(way, key);
        add(today.isPresent() ? "dated" : "undated", key);
        add(place(text), key);
        add(text.content(), key);
        return key.digest();
    }

    /** From where libraries and pictures are looked for. */
    private static String place(SourceText text) {
        try {
            return text.name().startsWith("file:") ? text.name() : Path.of(text.name()).toAbsolutePath().normalize().toString();
        } catch (InvalidPathException none) {
            return text.name();
        }
    }

    private static void add(String words, MessageDigest key) {
        byte[] bytes = words.getBytes(StandardCharsets.UTF_8);
        for (int shift = 24; shift >= 0; shift -= 8) {
            key.update((byte) (bytes.length >> shift));
        }
        key.update(bytes);
    }
}

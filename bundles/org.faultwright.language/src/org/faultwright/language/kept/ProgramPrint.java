/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.IOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.antlr.runtime.Lexer;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.parser.IParseResult;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.quantity.Exact;

/**
 * What tells one build of the program from another: the classes of the language, of every rule and of the program that asks, by the check sums
 * that their archives list; the libraries that read with them, and the Java machine, by their versions. No version number is relied on that somebody may forget to raise.
 */
final class ProgramPrint {
    private static final List<Class<?>> OWN = List.of(Exact.class, Document.class, Checker.class, ProcedureReader.class);
    private static final List<Class<?>> OTHERS = List.of(Lexer.class, EObject.class, IParseResult.class);
    private static final Optional<byte[]> PRINT = take();

    private ProgramPrint() {
    }

    /**
     * Absent where it cannot be told which build this is.
     *
     * @param user of the program that asks, which may put more into what is found, such as fixes that it tried
     */
    static Optional<byte[]> with(Class<?> user) {
        if (PRINT.isEmpty()) {
            return PRINT;
        }
        try {
            MessageDigest print = Seal.digest();
            print.update(PRINT.get());
            addOwn(user, print);
            return Optional.of(print.digest());
        } catch (IOException | IllegalArgumentException | SecurityException unknown) {
            return Optional.empty();
        }
    }

    private static Optional<byte[]> take() {
        try {
            MessageDigest print = Seal.digest();
            for (Class<?> one : OWN) {
                addOwn(one, print);
            }
            for (Class<?> one : OTHERS) {
                add(place(one).getFileName().toString(), print);
            }
            add(System.getProperty("java.runtime.version", ""), print);
            add(Locale.getDefault().toLanguageTag(), print);
            return Optional.of(print.digest());
        } catch (IOException | IllegalArgumentException | SecurityException unknown) {
            return Optional.empty();
        }
    }

    private static void addOwn(Class<?> one, MessageDigest print) throws IOException {
        Path place = place(one);
        if (Files.isDirectory(place)) {
            addFolder(place, print);
        } else {
            addArchive(place, print);
        }
    }

    private static Path place(Class<?> one) throws IOException {
        CodeSource source = one.getProtectionDomain().getCodeSource();
        URL location = source == null ? null : source.getLocation();
        if (location == null || !"file".equals(location.getProtocol())) {
            throw new IOException("no place of " + one);
        }
        // some class loaders leave spaces and umlauts as they are
        String path = location.getPath();
        Path asWritten = new java.io.File(path).toPath();
        return Files.exists(asWritten) ? asWritten : new java.io.File(java.net.URI.create(location.toString()).getPath()).toPath();
    }

    private static void addArchive(Path archive, MessageDigest print) throws IOException {
        try (ZipFile zip = new ZipFile(archive.toFile())) {
            for (ZipEntry entry : (Iterable<ZipEntry>) zip.stream().map(ZipEntry.class::cast)::iterator) {
                add(entry.getName(), print);
                add(Long.toHexString(entry.getCrc()), print);
            }
        }
    }

    /** Of classes that were built and not yet packed. */
    private static void addFolder(Path folder, MessageDigest print) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
                add(folder.relativize(file).toString(), print);
                add(Files.size(file) + " " + Files.getLastModifiedTime(file), print);
            }
        }
    }

    private static void add(String words, MessageDigest print) {
        print.update(words.getBytes(StandardCharsets.UTF_8));
        print.update((byte) 0);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;

/** Reads texts for tests. */
final class Reading {
    private static final ProcedureReader ALONE = new ProcedureReader((library, fromFile) -> Optional.empty());

    private Reading() {
    }

    static Document document(String text) {
        return ALONE.read(new SourceText("Test.procedure", text));
    }

    /** @param libraries name to text */
    static Document document(String text, Map<String, String> libraries) {
        return new ProcedureReader((library, fromFile) -> Optional.ofNullable(libraries.get(library))
                .map(found -> new SourceText(library + ".procedure", found))).read(new SourceText("Test.procedure", text));
    }

    /** A procedure with these lines in it. */
    static Procedure procedure(String lines) {
        return (Procedure) document("procedure Test \"A test\"\n" + lines);
    }

    static Library library(String lines) {
        return (Library) document("library Test \"A test\"\n" + lines);
    }

    /** The one step in these lines. */
    static <S extends Step> S step(Class<S> kind, String lines) {
        return kind.cast(procedure(lines).steps().get(0));
    }

    static List<String> problems(String lines) {
        return procedure(lines).problems().stream().map(problem -> problem.message()).toList();
    }

    /** A text beside the tests. */
    static String resource(String name) {
        try (InputStream text = Reading.class.getResourceAsStream(name)) {
            return new String(text.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The procedures and libraries that the project ships. */
    static List<Path> demo() {
        try (Stream<Path> files = Files.walk(Path.of("..", "..", "procedures-demo"))) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static String content(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

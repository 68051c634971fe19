/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.publish.exports.Exports;

/** Procedures to publish: one with every feature of the language, the demo procedures, and whatever a test writes. */
public final class Samples {
    /** What the examples of the reference are taken from, with a picture beside it. */
    public static final Path REFERENCE = Path.of("..", "org.faultwright.language.tests", "src", "test", "resources", "reference",
            "DunmarshLampDark.procedure");

    private static final Map<Path, Publication> DEMOS = new ConcurrentHashMap<>();

    private Samples() {
    }

    /** One step of every kind, every form of limit, every signal word, bounded repeats and nested routines. */
    public static Publication everything() {
        return read(new SourceText("EdnorColdPlate.procedure", resource("EdnorColdPlate.procedure")));
    }

    /** A procedure without a library. */
    public static Publication text(String text) {
        return read(new SourceText("Test.procedure", text));
    }

    private static Publication read(SourceText text) {
        ProcedureReader reader = new ProcedureReader((library, from) ->
                library.equals("SlipwayBench") ? Optional.of(new SourceText("SlipwayBench.procedure",
                        resource("library/SlipwayBench.procedure"))) : Optional.empty());
        return allowed((Procedure) reader.read(text));
    }

    public static List<Path> demos() {
        try (Stream<Path> files = Files.list(Path.of("..", "..", "procedures-demo"))) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    /** Read and checked once. */
    public static Publication demo(Path file) {
        return DEMOS.computeIfAbsent(file, Samples::read);
    }

    private static Publication read(Path file) {
        try {
            return allowed((Procedure) ProcedureReader.overFiles().read(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Publication allowed(Procedure procedure) {
        try {
            return Publication.of(new FullCheck(Optional.empty()).check(procedure), Drafts.ALLOWED);
        } catch (PublishingRefused impossible) {
            throw new AssertionError("drafts are allowed here", impossible);
        }
    }

    public static PublishedFiles publish(String export, Publication publication) {
        return ((ProcedureExport) Exports.named(export).orElseThrow()).publish(publication);
    }

    public static String string(String export, Publication publication) {
        return new String(publish(export, publication).bytes(), StandardCharsets.UTF_8);
    }

    private static String resource(String name) {
        try (InputStream in = Samples.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

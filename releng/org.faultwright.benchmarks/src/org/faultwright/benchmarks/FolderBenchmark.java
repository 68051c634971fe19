/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.parsing.PlainParser;
import org.faultwright.language.server.EditingServices;
import org.faultwright.language.server.OpenText;
import org.faultwright.procedure.Document;

/**
 * One piece of work over a folder, for one fresh process to be timed: {@code make FOLDER FILES STEPS}, {@code parse FOLDER}, {@code read FOLDER},
 * {@code quick FOLDER}, {@code check FOLDER}, each in one thread; or {@code open FOLDER}, which has every file open for writing at once and tells
 * the megabytes that this takes.
 */
public final class FolderBenchmark {
    private FolderBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[1]);
        long start = System.nanoTime();
        long result = switch (arguments[0]) {
            case "make" -> make(folder, Integer.parseInt(arguments[2]), Integer.parseInt(arguments[3]));
            case "parse" -> parse(files(folder));
            case "read" -> read(files(folder));
            case "quick" -> check(files(folder), new Checker(RuleSet.quick(), Optional.empty()));
            case "check" -> check(files(folder), new Checker());
            case "open" -> open(files(folder));
            default -> throw new IllegalArgumentException("make, parse, read, quick, check or open, not " + arguments[0]);
        };
        System.out.printf("%s %.2f s, processor time of its thread %.2f s (%d)%n", arguments[0], (System.nanoTime() - start) / 1e9,
                ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e9, result);
    }

    private static long make(Path folder, int files, int steps) throws IOException {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("MadeBench.procedure"), MadeProcedures.library());
        long characters = 0;
        for (int i = 0; i < files; i++) {
            String text = MadeProcedures.procedure("Made" + i, steps, i);
            Files.writeString(folder.resolve("Made" + i + ".procedure"), text);
            characters += text.length();
        }
        return characters;
    }

    private static long parse(List<Path> files) throws IOException {
        PlainParser parser = new PlainParser();
        long errors = 0;
        for (Path file : files) {
            errors += parser.parse(Files.readString(file)).hasSyntaxErrors() ? 1 : 0;
        }
        return errors;
    }

    private static long read(List<Path> files) throws IOException {
        ProcedureReader reader = ProcedureReader.overFiles();
        long problems = 0;
        for (Path file : files) {
            problems += reader.read(file).problems().size();
        }
        return problems;
    }

    private static long check(List<Path> files, Checker checker) throws IOException {
        ProcedureReader reader = ProcedureReader.overFiles();
        long findings = 0;
        for (Path file : files) {
            Document document = reader.read(file);
            findings += checker.check(document).size();
        }
        return findings;
    }

    /** @return the megabytes in use with all of them open, what every rule found among them */
    private static long open(List<Path> files) throws IOException {
        EditingServices services = new EditingServices();
        List<OpenText> open = new ArrayList<>();
        for (Path file : files) {
            open.add(services.withEveryRule(services.update(file.toString(), Files.readString(file))));
        }
        System.gc();
        Runtime memory = Runtime.getRuntime();
        long used = memory.totalMemory() - memory.freeMemory();
        // still held here, or there would be nothing to measure
        System.out.println(open.size() + " open");
        return used / 1_000_000;
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }
}

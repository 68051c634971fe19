/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Every rule finds the same on all the days that are said to be alike. */
@Timeout(600)
class ValidDaysTest {
    private static final List<Path> FOLDERS = List.of(Path.of("../../procedures-demo"),
            Path.of("../org.faultwright.analysis.tests/src/test/resources/flawed"));
    private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
    private static final LocalDate LONG_AGO = LocalDate.of(1990, 1, 1);
    private static final LocalDate LATE = LocalDate.of(2100, 1, 1);

    private final ProcedureReader reader = ProcedureReader.overFiles();

    @Test
    void should_find_the_same_on_the_first_and_the_last_of_them() throws IOException {
        int texts = 0;
        int longer = 0;
        for (Path folder : FOLDERS) {
            for (Path file : files(folder)) {
                Document document = reader.read(file);
                List<SourceText> read = Stream.concat(Stream.of(document.source()), document.libraries().stream().map(one -> one.source())).toList();
                for (LocalDate today : asked(read)) {
                    List<Finding> found = found(document, today);
                    ValidDays days = ValidDays.about(today, read, found);
                    assertTrue(days.holds(today), file + " on " + today);
                    LocalDate from = days.from().isBefore(LONG_AGO) ? LONG_AGO : days.from();
                    LocalDate until = days.until().isAfter(LATE) ? LATE : days.until();
                    longer += ChronoUnit.DAYS.between(from, until) > 1 ? 1 : 0;
                    for (LocalDate other : new TreeSet<>(List.of(from, until))) {
                        assertEquals(words(found), words(found(document, other)), file + ", found on " + today + ", the same on " + other);
                    }
                }
                texts++;
            }
        }
        assertTrue(texts > 10 && longer > texts, texts + " texts, " + longer);
    }

    /** The days beside those that are written, and one in every gap. */
    private static List<LocalDate> asked(List<SourceText> texts) {
        TreeSet<LocalDate> written = new TreeSet<>();
        texts.forEach(text -> DAY.matcher(text.content()).results().map(MatchResult::group).map(LocalDate::parse).forEach(written::add));
        TreeSet<LocalDate> asked = new TreeSet<>(List.of(LocalDate.of(2026, 11, 26)));
        Stream.of(Optional.ofNullable(written.isEmpty() ? null : written.first()), Optional.ofNullable(written.isEmpty() ? null : written.last()))
                .flatMap(Optional::stream).forEach(day -> asked.addAll(List.of(day.minusDays(1), day, day.plusDays(1))));
        return new ArrayList<>(asked);
    }

    /** The quick rules and no search for an order: those know no day of their own but by the others. */
    private static List<Finding> found(Document document, LocalDate today) {
        return new Checker(RuleSet.quick(), Optional.of(today)).check(document);
    }

    private static List<String> words(List<Finding> findings) {
        return findings.stream().map(finding -> finding + finding.path().toString() + finding.fixes().stream().map(fix -> fix.title()).toList()).toList();
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.Finding;
import org.faultwright.procedure.SourceText;

/**
 * The days on which the same is found. Rules hold the day of today against days that are written in the texts, and against nothing else; so what
 * was found stays true until the next of these, unless it speaks of today itself.
 *
 * @param from  the first
 * @param until the last
 */
record ValidDays(LocalDate from, LocalDate until) {
    /** A day as the language writes it; more of them than the text means do no harm. */
    private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

    static ValidDays about(LocalDate today, Collection<SourceText> texts, List<Finding> found) {
        if (found.stream().anyMatch(finding -> speaksOf(today.toString(), finding))) {
            return new ValidDays(today, today);
        }
        LocalDate from = LocalDate.MIN;
        LocalDate until = LocalDate.MAX;
        for (SourceText text : texts) {
            Matcher days = DAY.matcher(text.content());
            while (days.find()) {
                Optional<LocalDate> written = day(days.group());
                if (written.isEmpty()) {
                    continue;
                }
                LocalDate day = written.get();
                if (day.equals(today)) {
                    return new ValidDays(today, today);
                }
                if (day.isBefore(today) && !day.isBefore(from)) {
                    from = day.plusDays(1);
                } else if (day.isAfter(today) && !day.isAfter(until)) {
                    until = day.minusDays(1);
                }
            }
        }
        return new ValidDays(from, until);
    }

    private static boolean speaksOf(String today, Finding finding) {
        return finding.message().contains(today) || finding.advice().contains(today) || finding.fixes().stream().anyMatch(fix ->
                fix.title().contains(today) || fix.edits().stream().anyMatch(edit -> edit.replacement().contains(today)));
    }

    /** Absent for what is no day, such as a number of a part. */
    private static Optional<LocalDate> day(String written) {
        try {
            return Optional.of(LocalDate.parse(written));
        } catch (DateTimeParseException none) {
            return Optional.empty();
        }
    }

    boolean holds(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(until);
    }
}

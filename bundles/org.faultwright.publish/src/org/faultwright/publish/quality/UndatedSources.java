/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Step;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.UsedDeclarations;
import org.faultwright.publish.quality.QualityReport.Line;

/** The documents that steps, limits and codes rest on; and those of which nobody can tell which edition is meant. */
final class UndatedSources {
    private static final Pattern EDITION = Pattern.compile("(?<![0-9])(19|20)[0-9]{2}(?![0-9])|(?iu)\\b(edition|ed\\.|issue|revision|rev\\.|version|\\d+(st|nd|rd|th) ed)");

    private UndatedSources() {
    }

    /** Those without a date, a year, an edition or an issue, each once. */
    static List<String> of(Line line) {
        return all(line.steps().plan()).filter(source -> source.dated().isEmpty() && !EDITION.matcher(source.document()).find())
                .map(source -> "\u201C" + PlainText.line(source.document()) + "\u201D").distinct().sorted().toList();
    }

    /** The day of the oldest one. */
    static Optional<LocalDate> oldest(Line line) {
        return all(line.steps().plan()).flatMap(source -> source.dated().stream()).min(LocalDate::compareTo);
    }

    static Stream<Source> all(CardPlan plan) {
        Stream<Source> ofSteps = plan.steps().flatMap(step -> Stream.concat(step.frame().source().stream(), expected(step).stream()));
        Stream<Source> ofCodes = new UsedDeclarations(plan).indicators().stream().map(Indicator::source).flatMap(Optional::stream);
        return Stream.concat(ofSteps, ofCodes);
    }

    private static Optional<Source> expected(Step step) {
        return step instanceof Step.Measure measure ? measure.expects().flatMap(Step.Expectation::source)
                : step instanceof Step.Calculate calculate ? calculate.expects().flatMap(Step.Expectation::source) : Optional.empty();
    }
}

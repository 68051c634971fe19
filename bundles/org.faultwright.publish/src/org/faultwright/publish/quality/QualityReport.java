/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.compare.MatchedProcedures;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.ProcedureFolder.CheckedLibrary;
import org.faultwright.publish.ProcedureFolder.Imprint;
import org.faultwright.publish.ProcedureFolder.LeftOut;
import org.faultwright.publish.Publication;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.since.ToldDifference;

/**
 * What is known of the quality of a folder's procedures.
 *
 * @param lines     those with most to mend first
 * @param libraries the libraries of the folder itself
 * @param since     the last release, where it is known
 * @param asOf      the day that due dates are held against, where one was given
 * @param sourceAge after how many months a source is old
 * @param leftOut   procedures that are not looked at because of their open errors
 * @param gone      procedures of the last release that nobody finds today
 */
record QualityReport(String title, List<Line> lines, List<CheckedLibrary> libraries, Optional<EarlierRelease> since,
        Optional<LocalDate> asOf, int sourceAge, List<LeftOut> leftOut, Optional<Imprint> made, List<Procedure> gone) {
    /** One procedure. @param since what changed in it, where the last release has it @param steps as its card calls them */
    record Line(Publication publication, QaSummary summary, Optional<SinceRelease> since, CardSteps steps) {
        int count(Severity severity) {
            return summary.bySeverity().getOrDefault(severity, 0);
        }

        /** What changed, in the words of the card. */
        List<ToldDifference> told() {
            return since.map(one -> ToldDifference.of(one, this::onCard)).orElse(List.of());
        }

        private Optional<String> onCard(Step step) {
            return steps.number(step).isEmpty() ? Optional.empty() : Optional.of(steps.named(step));
        }

        QaSummary.Share faultsFound() {
            return new QaSummary.Share((int) summary.faults().stream().filter(QaSummary.FaultLine::isFound).count(),
                    summary.faults().size());
        }
    }

    static QualityReport of(ProcedureFolder folder) {
        Comparator<Line> worstFirst = Comparator.<Line>comparingInt(line -> -line.count(Severity.ERROR))
                .thenComparingInt(line -> -line.count(Severity.WARNING))
                .thenComparing(line -> line.publication().procedure().name().text());
        Optional<MatchedProcedures> compared = folder.compared();
        List<Line> lines = folder.procedures().stream().map(one -> line(one, folder, compared)).sorted(worstFirst).toList();
        return new QualityReport(folder.title(), lines, folder.libraries(), folder.since(), folder.asOf(), folder.sourceAge(), folder.leftOut(), folder.made(),
                compared.map(MatchedProcedures::gone).orElse(List.of()));
    }

    private static Line line(Publication publication, ProcedureFolder folder, Optional<MatchedProcedures> compared) {
        Subject subject = new Subject(publication.procedure(), folder.asOf());
        return new Line(publication, QaSummary.of(subject, publication.findings()).orElseThrow(),
                compared.flatMap(all -> all.earlier(publication.procedure()))
                        .map(earlier -> SinceRelease.of(earlier, publication.procedure())), new CardSteps(TypesetPlan.of(publication)));
    }

    /** Whether anything was held against an earlier text. */
    boolean isCompared() {
        return lines.stream().anyMatch(line -> line.since().isPresent());
    }

    /** How many there are in the procedures and libraries together; what several procedures share counts once. */
    int count(Severity severity) {
        return (int) Stream.concat(lines.stream().flatMap(line -> line.publication().findings().stream()),
                libraries.stream().flatMap(checked -> checked.findings().stream()))
                .filter(finding -> finding.severity() == severity)
                .map(finding -> List.of(finding.rule(), finding.at().toString(), finding.message())).distinct().count();
    }

    /** The shares of all procedures together. */
    QaSummary.Share total(Function<Line, QaSummary.Share> share) {
        return lines.stream().map(share).reduce(new QaSummary.Share(0, 0),
                (one, other) -> new QaSummary.Share(one.some() + other.some(), one.all() + other.all()));
    }

    /** Of one procedure alone the report has the procedure's name. @param ending such as {@code .pdf} */
    String fileName(String ending) {
        return lines.size() == 1 ? FileName.of(lines.get(0).publication().procedure(), ".quality" + ending)
                : "quality" + ending;
    }

    /** Stands for all that the report was made from: texts, libraries, what they were compared with, the days. */
    String digest() {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            Stream<String> texts = lines.stream().map(line -> line.publication().digest() + line.since().map(one -> ContentDigest.of(one.earlier())).orElse(""));
            Stream<String> others = Stream.concat(libraries.stream().map(checked -> ContentDigest.of(checked.library())),
                    Stream.concat(leftOut.stream().map(LeftOut::procedure), gone.stream()).map(ContentDigest::of));
            Stream.of(texts, others, Stream.of(String.valueOf(asOf), String.valueOf(sourceAge), String.valueOf(made), String.valueOf(since.map(EarlierRelease::place))))
                    .flatMap(some -> some).forEach(part -> sha.update((part + "\n").getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

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
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.ProcedureFolder.CheckedLibrary;
import org.faultwright.publish.Publication;
import org.faultwright.publish.card.SetPlan;
import org.faultwright.publish.since.SinceRelease;

/**
 * What is known of the quality of a folder's procedures.
 *
 * @param lines     those with most to mend first
 * @param libraries the libraries of the folder itself
 * @param since     the last release, where it is known
 * @param asOf      the day that due dates are held against, where one was given
 * @param sourceAge after how many months a source is old
 */
record QualityReport(String title, List<Line> lines, List<CheckedLibrary> libraries, Optional<EarlierRelease> since,
        Optional<LocalDate> asOf, int sourceAge) {
    /** One procedure. @param since what changed in it, where the last release has it @param steps as its card calls them */
    record Line(Publication publication, QaSummary summary, Optional<SinceRelease> since, CardSteps steps) {
        int count(Severity severity) {
            return summary.bySeverity().getOrDefault(severity, 0);
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
        List<Line> lines = folder.procedures().stream().map(one -> line(one, folder)).sorted(worstFirst).toList();
        return new QualityReport(folder.title(), lines, folder.libraries(), folder.since(), folder.asOf(), folder.sourceAge());
    }

    private static Line line(Publication publication, ProcedureFolder folder) {
        Subject subject = new Subject(publication.procedure(), folder.asOf());
        return new Line(publication, QaSummary.of(subject, publication.findings()).orElseThrow(),
                folder.since().flatMap(all -> all.of(publication.procedure().name().text()))
                        .map(earlier -> SinceRelease.of(earlier, publication.procedure())), new CardSteps(SetPlan.of(publication)));
    }

    /** The procedures of the last release that are not here any more. */
    List<String> gone() {
        Set<String> here = lines.stream().map(line -> line.publication().procedure().name().text()).collect(Collectors.toSet());
        return since.map(EarlierRelease::procedures).orElse(List.of()).stream().map(procedure -> procedure.name().text())
                .filter(name -> !here.contains(name)).toList();
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

    /** Stands for the content of all its procedures. */
    String digest() {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            lines.forEach(line -> sha.update(line.publication().digest().getBytes(StandardCharsets.US_ASCII)));
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.QaSummary;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;

/**
 * What is known of the quality of a folder's procedures.
 *
 * @param lines those with most to mend first
 */
record QualityReport(String title, List<Line> lines) {
    /** One procedure. */
    record Line(Publication publication, QaSummary summary) {
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
        List<Line> lines = folder.procedures().stream().map(QualityReport::line).sorted(worstFirst).toList();
        return new QualityReport(folder.title(), lines);
    }

    private static Line line(Publication publication) {
        Subject subject = new Subject(publication.procedure(), Optional.empty());
        return new Line(publication, QaSummary.of(subject, publication.findings()).orElseThrow());
    }

    int count(Severity severity) {
        return lines.stream().mapToInt(line -> line.count(severity)).sum();
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

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.Caution;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.RunningLines;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;

/** The report as a page: what can be read in two minutes first, the details of each procedure behind. */
final class QualityPage {
    private static final int MOST_POINTS = 4;
    /** What comes first is protection that is lost, or open errors: no page is saved by leaving some of that out. */
    private static final int MOST_GRAVEST = 20;

    private QualityPage() {
    }

    static Page of(QualityReport report, Medium medium) {
        String title = "Quality of " + report.title();
        Page page = new Page(medium, title, "Completeness, units and findings of the procedures of " + report.title());
        if (medium == Medium.PAPER) {
            RunningLines.add(page, title, procedures(report), "SHA-256 " + report.digest());
        }
        Tag main = page.body().add("main", "quality");
        main.say("p", "what", "Quality report");
        main.say("h1", "", report.title());
        main.say("p", "", procedures(report) + ": " + statuses(report) + ". " + report.asOf().map(day -> "Due dates and the age of sources as of "
                + day + ".").orElse("No day was given, so calibration and the age of sources were not looked at."));
        figures(main, report);
        lookFirst(main, report);
        if (report.since().isPresent()) {
            ChangesPart.front(main, report);
        }
        SignOff.whole(main, report.digest(), report.lines().stream().filter(line -> line.publication().status() == Revision.Status.DRAFT).count());
        RecordPart.add(main, report);
        main.add("p", "caution small").text(Caution.SENTENCES + " This report counts and computes; it declares nothing"
                + " free of danger.");
        if (!report.lines().isEmpty()) {
            overview(main, report);
            report.lines().forEach(line -> new QualityDetail(line).add(main, place(report, line)));
            QualityTogether.add(main, report);
        }
        return page;
    }

    /** Names cannot be addresses; numbers can. */
    private static String place(QualityReport report, Line line) {
        return "procedure-" + (report.lines().indexOf(line) + 1);
    }

    private static String procedures(QualityReport report) {
        return report.lines().size() == 1 ? "1 procedure" : report.lines().size() + " procedures";
    }

    private static String statuses(QualityReport report) {
        return Stream.of(Revision.Status.RELEASED, Revision.Status.REVIEWED, Revision.Status.DRAFT)
                .map(status -> report.lines().stream().filter(line -> line.publication().status() == status).count()
                        + " " + status.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
    }

    private static void figures(Tag main, QualityReport report) {
        Tag table = main.add("table", "figures");
        Tag names = table.add("thead").add("tr");
        Tag values = table.add("tbody").add("tr");
        figure(names, values, "open errors", String.valueOf(report.count(Severity.ERROR)));
        figure(names, values, "warnings", String.valueOf(report.count(Severity.WARNING)));
        figure(names, values, "faults found by the steps", share(report.total(Line::faultsFound)));
        figure(names, values, "examples go as they say", share(report.total(line -> line.summary().examples())));
        figure(names, values, "outcomes tried by an example", share(report.total(line -> line.summary().outcomes())));
        figure(names, values, "limits with a source", share(report.total(line -> line.summary().limits())));
    }

    private static void figure(Tag names, Tag values, String name, String value) {
        names.add("th").set("scope", "col").text(name);
        values.add("td").text(value);
    }

    private static String share(QaSummary.Share share) {
        return share.all() == 0 ? "none" : share.some() + "/" + share.all();
    }

    private static void lookFirst(Tag main, QualityReport report) {
        List<LookFirst.Group> groups = LookFirst.of(report);
        List<String> clean = groups.stream().filter(group -> group.points().isEmpty()).map(LookFirst.Group::clean).toList();
        main.say("h2", "", clean.size() == groups.size() ? "Nothing to look at first" : "Look at these, the gravest first");
        Tag list = main.add("ol", "gravest");
        for (LookFirst.Group group : groups) {
            List<String> points = group.points();
            if (!points.isEmpty()) {
                Tag item = list.add("li").say("b", "", group.title() + " (" + points.size() + ")");
                Tag lines = item.add("ul");
                int most = groups.indexOf(group) == 0 ? MOST_GRAVEST : MOST_POINTS;
                points.stream().limit(most).forEach(point -> lines.say("li", "", point));
                if (points.size() > most) {
                    lines.say("li", "small", "and " + (points.size() - most) + " more, each with its procedure");
                }
            }
        }
        if (!clean.isEmpty()) {
            main.say("p", "small", "None found: " + String.join("; ", clean) + ".");
        }
        if (report.since().isEmpty()) {
            main.say("p", "small", "Not compared with an earlier release: none was named.");
        }
    }

    private static void overview(Tag main, QualityReport report) {
        main.add("section", "detail").say("h2", "", "Each procedure");
        Tag rows = Rows.table(main, "overview", List.of("Procedure", "Revision", "Errors, warnings, advice", "Faults found",
                "Told apart", "Outcomes tried", "Conclusions tried", "Limits sourced", "Time expected", "Worst time"));
        for (Line line : report.lines()) {
            QaSummary summary = line.summary();
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").link(place(report, line), "", "To the details of " + line.publication().title())
                    .text(line.publication().title());
            row.say("td", "", line.publication().revision().replaceFirst("^Revision ", "").replaceFirst("^No revision", "none"));
            row.say("td", line.count(Severity.ERROR) > 0 ? "open" : "", line.count(Severity.ERROR) + ", "
                    + line.count(Severity.WARNING) + ", " + line.count(Severity.ADVICE));
            row.say("td", "", share(line.faultsFound()));
            row.say("td", "", summary.testability().map(found -> PrintedNumbers.percent(found.isolated(1))).orElse("none"));
            row.say("td", "", share(summary.outcomes()));
            row.say("td", "", share(summary.conclusions()));
            row.say("td", "", share(summary.limits()));
            row.say("td", "", expected(summary.times()));
            row.say("td", "", worst(summary.times()));
        }
    }

    static String expected(TimeStudy.Figure figure) {
        return figure.expected().map(PrintedNumbers::minutes).map(time -> figure.assumed() ? "about " + time : time)
                .orElse("without end");
    }

    static String worst(TimeStudy.Figure figure) {
        return figure.worst().map(PrintedNumbers::minutes).orElse("without end");
    }
}

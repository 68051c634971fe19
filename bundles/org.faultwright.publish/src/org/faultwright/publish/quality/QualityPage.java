/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.Caution;
import org.faultwright.publish.page.ColumnLabels;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.RunningLines;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.quantity.Exact;

/** The report as a page: what can be read in two minutes first, the details of each procedure behind. */
final class QualityPage {
    static final String ASSUMED = "* The text does not say how often a fault shows each result; here they were taken as equally likely.";

    private static final String COUNTED = "What was only counted in front";
    private static final int MOST_COUNTED = 8;
    private static final String BEHIND = "More of the gravest, to be read before signing";

    private QualityPage() {
    }

    static Page of(QualityReport report, Medium medium) {
        String title = "Quality report: " + report.title();
        Page page = new Page(medium, title, "Completeness, units and findings of the procedures of " + report.title());
        if (medium == Medium.PAPER) {
            RunningLines.add(page, title, procedures(report), "SHA-256 over texts and comparison " + report.digest());
        }
        Tag main = page.body().add("main", "quality");
        main.say("p", "what", report.title());
        main.say("h1", "", "Quality report");
        main.say("p", "", procedures(report) + ": " + statuses(report) + ". " + (report.leftOut().isEmpty() ? "" : Phrases.counted(report.leftOut().size(), "procedure was",
                "procedures were") + " left out because of open errors. ") + report.asOf().map(day -> "Due dates and the age of sources as of " + day + ". ").orElse("")
                + report.made().map(made -> "Made by " + made.program() + " on " + made.on() + ".").orElse(""));
        figures(main, report);
        if (report.since().isPresent()) {
            ChangesPart.front(main, report);
        }
        List<LookFirst.Group> groups = LookFirst.of(report);
        List<Integer> said = FirstPage.said(report, groups);
        main.add("p", "caution small").text(Caution.SENTENCES + " This report counts and computes; it declares nothing"
                + " free of danger.");
        lookFirst(main, report, groups, said);
        RecordPart.add(main, report);
        following(main, groups, said);
        SignOff.whole(main, report);
        behind(main, groups, said);
        if (!report.lines().isEmpty()) {
            overview(main, report);
        }
        report.lines().forEach(line -> new QualityDetail(report, line).add(main, place(report, line), line == report.lines().get(0)));
        if (!report.lines().isEmpty()) {
            QualityOverview.add(main, report);
        }
        if (medium == Medium.SCREEN) {
            ColumnLabels.add(page);
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

    private static int left(List<LookFirst.Group> groups, List<Integer> said) {
        return IntStream.range(0, groups.size()).filter(i -> groups.get(i).isGrave()).map(i -> groups.get(i).points().size() - said.get(i)).sum();
    }

    /** Before the signature: nobody signs for what stands on another side without knowing that it does. */
    private static void following(Tag main, List<LookFirst.Group> groups, List<Integer> said) {
        int left = left(groups, said);
        if (left > 0) {
            main.say("p", "", "").say("b", "", (left == 1 ? "1 more of the gravest points stands" : left + " more of the gravest points stand") + " behind the signatures, under \u201C" + BEHIND
                    + "\u201D: read " + (left == 1 ? "it" : "them") + " before you sign.");
        }
    }

    private static void behind(Tag main, List<LookFirst.Group> groups, List<Integer> said) {
        if (left(groups, said) > 0) {
            gravest(main, groups, said);
        }
        List<LookFirst.Group> counted = IntStream.range(0, groups.size()).filter(i -> said.get(i) == 0 && !groups.get(i).isGrave() && !groups.get(i).points().isEmpty())
                .mapToObj(groups::get).toList();
        if (!counted.isEmpty()) {
            counted(main, counted);
        }
    }

    /** The first of what was only counted in front. */
    private static void counted(Tag main, List<LookFirst.Group> groups) {
        main.add("section", "detail").say("h2", "", COUNTED);
        Tag list = main.add("ol", "gravest");
        for (LookFirst.Group group : groups) {
            List<String> points = group.points();
            Tag lines = list.add("li").say("b", "", group.title() + " (" + points.size() + ")").add("ul");
            points.stream().limit(MOST_COUNTED).forEach(point -> lines.say("li", "", point));
            if (points.size() > MOST_COUNTED) {
                lines.say("li", "small", "and " + (points.size() - MOST_COUNTED) + " more of " + points.size() + ", each with its procedure");
            }
        }
    }

    private static void gravest(Tag main, List<LookFirst.Group> groups, List<Integer> said) {
        main.add("section", "detail").say("h2", "", BEHIND);
        Tag list = main.add("ol", "gravest");
        for (int i = 0; i < groups.size(); i++) {
            List<String> points = groups.get(i).points();
            if (groups.get(i).isGrave() && said.get(i) < points.size()) {
                Tag lines = list.add("li").say("b", "", groups.get(i).title() + " (" + (points.size() - said.get(i)) + " more of " + points.size() + ")").add("ul");
                points.stream().skip(said.get(i)).forEach(point -> lines.say("li", "", point));
            }
        }
    }

    private static void lookFirst(Tag main, QualityReport report, List<LookFirst.Group> groups, List<Integer> most) {
        List<String> clean = groups.stream().filter(group -> group.points().isEmpty()).map(LookFirst.Group::clean).toList();
        main.say("h2", "", heading(groups.size() - clean.size()));
        Tag list = main.add("ol", "gravest");
        for (int i = 0; i < groups.size(); i++) {
            LookFirst.Group group = groups.get(i);
            List<String> points = group.points();
            if (!points.isEmpty()) {
                int said = most.get(i);
                Tag item = list.add("li").say("b", "", group.title() + " (" + points.size() + ")" + (said == 0 ? ": behind the signatures" : ""));
                if (said > 0) {
                    Tag lines = item.add("ul");
                    points.stream().limit(said).forEach(point -> lines.say("li", "", point));
                    if (points.size() > said) {
                        lines.say("li", "small", "and " + (points.size() - said) + " more of " + points.size() + ", " + where(group));
                    }
                }
            }
        }
        if (!clean.isEmpty()) {
            main.say("p", "small", "None found: " + clean.stream().filter(words -> !words.isEmpty()).collect(Collectors.joining("; ")) + ".");
        }
        String not = MissingInputs.of(report);
        if (!not.isEmpty()) {
            main.say("p", "small", not);
        }
    }

    private static String where(LookFirst.Group group) {
        return group.isGrave() ? "behind the signatures" : "each with its procedure";
    }

    private static String heading(int groups) {
        return groups == 0 ? "Nothing to look at first" : groups == 1 ? "Look at this" : "Look at these, the gravest first";
    }

    private static void overview(Tag main, QualityReport report) {
        main.add("section", "detail").say("h2", "", "Each procedure");
        Tag rows = ReportTables.table(main, "overview", List.of("Procedure", "Revision", "Findings", "Faults found",
                "Told apart", "Results tried", "Conclusions tried", "Limits sourced", "Time expected, min", "Worst time, min"));
        for (Line line : report.lines()) {
            QaSummary summary = line.summary();
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").link(place(report, line), "", "To the details of " + line.publication().title())
                    .text(line.publication().title());
            row.say("td", "", line.publication().revision().replaceFirst("^Revision ", "").replaceFirst("^No revision", "none"));
            row.say("td", line.count(Severity.ERROR) > 0 ? "open" : "", findings(line));
            row.say("td", "", ReportTables.share(line.faultsFound()));
            row.say("td", "", summary.testability().map(found -> PrintedNumbers.percent(found.isolated(1))).orElse("none"));
            row.say("td", "", ReportTables.share(summary.outcomes()));
            row.say("td", "", ReportTables.share(summary.conclusions()));
            row.say("td", "", ReportTables.share(summary.limits()));
            row.say("td", "number", expected(summary.times()));
            row.say("td", "number", worst(summary.times()));
        }
        main.say("p", "small", "Times are in whole minutes, rounded up as on the card, and those of a unit with one of its faults; the longest of all paths stands with each procedure."
                + (report.lines().stream().anyMatch(line -> line.summary().times().assumed()) ? " " + ASSUMED : ""));
    }

    private static String findings(Line line) {
        List<String> counted = Stream.of(Severity.ERROR, Severity.WARNING, Severity.ADVICE).filter(severity -> line.count(severity) > 0)
                .map(severity -> severity == Severity.ADVICE ? line.count(severity) + " advice" : Phrases.counted(line.count(severity),
                        severity.name().toLowerCase(Locale.ROOT), severity.name().toLowerCase(Locale.ROOT) + "s")).toList();
        return counted.isEmpty() ? "none" : String.join(", ", counted);
    }

    /** In minutes, rounded up as on the card. */
    static String expected(TimeStudy.Figure figure) {
        return figure.expected().map(QualityPage::minutes).map(time -> figure.assumed() ? "* " + time : time)
                .orElse("without end");
    }

    static String worst(TimeStudy.Figure figure) {
        return figure.worst().map(QualityPage::minutes).orElse("without end");
    }

    private static String minutes(Exact seconds) {
        return seconds.dividedBy(Exact.of(60)).toDecimal(0, RoundingMode.CEILING).toPlainString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.UsedDeclarations;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.since.ToldDifference;

/** What somebody who signs must look at, the gravest first. What needs no look is named too. */
final class LookFirst {
    /** An instrument whose calibration ends within so many days is near its end. */
    private static final int NEAR_DAYS = 60;
    private static final int MOST_NAMED = 2;
    static final int WHOLE = Integer.MAX_VALUE;
    private static final int EARLY = 3;
    private static final String WIDER = "wider";
    private static final String UNTESTED = "protection-not-tested";

    /**
     * @param title  such as {@code Open errors}
     * @param clean  what is said where there is none, such as {@code open errors}
     * @param points one sentence each, with the procedures it is about
     * @param least  how many are said in front however little room there is; of dangers every one, while there is a side to say them on
     */
    record Group(String title, String clean, List<String> points, int least) {
        Group(String title, String clean, List<String> points) {
            this(title, clean, points, 0);
        }

        private Group inWhole() {
            return new Group(title, clean, points, WHOLE);
        }

        private Group early() {
            return new Group(title, clean, points, EARLY);
        }

        /** Whether none of its points may be missed. */
        boolean isGrave() {
            return least == WHOLE;
        }

        /** How many of the points are said where a group may say so many. */
        int said(int most) {
            return Math.min(points.size(), Math.max(least, most));
        }
    }

    private final QualityReport report;

    private LookFirst(QualityReport report) {
        this.report = report;
    }

    /** Every group in its order, empty ones among them. What cannot be known without a day or an earlier release is left out. */
    static List<Group> of(QualityReport report) {
        LookFirst look = new LookFirst(report);
        List<Group> groups = new ArrayList<>();
        boolean compared = report.isCompared();
        if (!report.leftOut().isEmpty()) {
            groups.add(new Group("Left out because of open errors, and not looked at here", "", report.leftOut().stream()
                    .map(one -> whole(one.procedure()) + ": " + one.why()).toList(), WHOLE));
        }
        report.since().ifPresent(release -> groups.addAll(look.cameAndWent(compared)));
        if (compared) {
            groups.add(look.protection());
        }
        String seen = report.leftOut().isEmpty() ? "" : " in what was looked at";
        groups.add(look.findings("Open errors", "open errors" + seen, Severity.ERROR).early());
        groups.add(look.each("A mains unit is repaired inside and handed back untested", "mains repairs without the protective tests" + seen, LookFirst::untested).inWhole());
        groups.add(look.each("An open unit is made live, and no note about shock is read there", "open units made live without a note about shock" + seen, Attention::untold).inWhole());
        groups.add(look.each("Codes that may tell of a danger or a fault, and that no result names", "codes of a danger or fault that no result names",
                Attention::codes).inWhole());
        if (compared) {
            groups.add(look.differences("Limits and readings changed since the last release", "other changed limits", Difference.Kind.LIMITS).early());
            groups.add(look.differences("Arrows changed since the last release", "changed arrows", Difference.Kind.OUTCOMES).early());
            groups.add(look.hidden());
            groups.add(look.differences("Safety and set-up changed since the last release", "changes of set-ups", Difference.Kind.SAFETY));
            groups.add(look.differences("Steps changed since the last release", "changed steps", Difference.Kind.STEPS));
            groups.add(look.differences("Instruments, points, codes and parts changed since the last release", "changed instruments or parts", Difference.Kind.BENCH));
        }
        report.asOf().ifPresent(day -> {
            groups.add(look.calibration(day));
            groups.add(look.sources(day));
        });
        groups.add(look.each("Faults that the steps miss or cannot tell apart", "faults missed or not told apart", LookFirst::faults));
        groups.add(look.each("Faults told apart by the steps and not by the record", "faults that the record tells less of than the steps", line -> Attention.reportedTogether(line, false)));
        groups.add(look.each("Not tried by any example", "outcomes or conclusions that no example tries", LookFirst::untried));
        groups.add(look.findings("Open warnings", "open warnings", Severity.WARNING));
        groups.add(look.each("Limits without a source, steps without a time", "limits without a source or steps without a time", LookFirst::unsaid));
        groups.add(look.undated());
        return List.copyOf(groups);
    }

    /** What cannot be compared, since one of both texts is missing. */
    private List<Group> cameAndWent(boolean compared) {
        String place = report.since().map(EarlierRelease::place).filter(name -> !name.isEmpty()).map(name -> " (" + name + ")").orElse("");
        List<Group> groups = new ArrayList<>();
        if (!compared) {
            groups.add(new Group("Nothing was compared", "", List.of("None of the texts was in the earlier release" + place + ": name the release that these procedures were in."), WHOLE));
        }
        groups.add(new Group("Procedures gone since the last release", compared ? "procedures gone since the last release" : "",
                report.gone().stream().map(LookFirst::whole).toList(), WHOLE));
        groups.add(new Group("Procedures called otherwise since the last release", "", report.lines().stream().filter(line -> line.since().flatMap(SinceRelease::renamedFrom).isPresent())
                .map(line -> line.publication().title() + ": renamed, was \u201C" + line.since().flatMap(SinceRelease::renamedFrom).orElseThrow() + "\u201D, compared with it.").toList(), WHOLE));
        List<String> fresh = report.lines().stream().filter(line -> line.since().isEmpty()).map(line -> line.publication().title()).toList();
        if (compared && !fresh.isEmpty()) {
            groups.add(new Group("New, so not compared: no earlier text", "", fresh.stream().map(title -> title + ".").toList(), WHOLE));
        }
        return groups;
    }

    /** A procedure that has no line here: its title, what it is for, which revision it had. */
    private static String whole(Procedure procedure) {
        String title = PlainText.line(procedure.title().isBlank() ? procedure.name().text() : procedure.title());
        return "\u201C" + title + "\u201D" + procedure.equipment().map(unit -> ", " + PlainText.line(unit.title())).orElse("")
                + procedure.revision().map(revision -> ", revision " + revision.number() + ", " + revision.status().name().toLowerCase(Locale.ROOT)).orElse(", no revision");
    }

    private static List<String> untested(Line line) {
        return line.publication().findings().stream().filter(finding -> finding.rule().equals(UNTESTED))
                .map(finding -> line.steps().inSentence(finding.message())).toList();
    }

    /** Removed before weakened before reworded, and of each what most procedures lost. */
    private Group protection() {
        Map<Difference.Loss, Map<String, List<String>>> said = new EnumMap<>(Difference.Loss.class);
        report.lines().forEach(line -> line.told().stream().filter(one -> one.kind() == Difference.Kind.PROTECTION).forEach(one ->
                said.computeIfAbsent(one.loss(), first -> new LinkedHashMap<>()).computeIfAbsent(one.sentence(), first -> new ArrayList<>()).add(line.publication().title())));
        List<String> points = new ArrayList<>();
        said.forEach((loss, sentences) -> sentences.entrySet().stream()
                .sorted(Comparator.comparingInt((Map.Entry<String, List<String>> entry) -> -Set.copyOf(entry.getValue()).size()))
                .forEach(entry -> points.add(Phrases.capital(loss.name().toLowerCase(Locale.ROOT)) + ", " + of(entry.getValue()) + ": " + entry.getKey())));
        return new Group("Protection removed, weakened or reworded since the last release", "protection lost since the last release", points, WHOLE);
    }

    /** The same of several procedures is said once, with their names. */
    private List<String> together(Map<String, List<String>> said) {
        return said.entrySet().stream().map(entry -> Phrases.capital(of(entry.getValue())) + ": " + entry.getKey()).toList();
    }

    /** Procedures by their titles where they are few; else how many they are. */
    private String of(Collection<String> titles) {
        Set<String> each = new LinkedHashSet<>(titles);
        boolean few = each.size() <= MOST_NAMED;
        return few ? String.join(", ", each) : each.size() == report.lines().size() ? "all procedures" : each.size() + " procedures";
    }

    private Group each(String title, String clean, Function<Line, List<String>> of) {
        Map<String, List<String>> said = new LinkedHashMap<>();
        report.lines().forEach(line -> of.apply(line).forEach(point ->
                said.computeIfAbsent(point, first -> new ArrayList<>()).add(line.publication().title())));
        return new Group(title, clean, together(said));
    }

    /** A limit that lets more pass stands before one that lets less pass. */
    private Group differences(String title, String clean, Difference.Kind kind) {
        return each(title, clean, line -> line.told().stream().filter(one -> one.kind() == kind)
                .sorted(Comparator.comparing((ToldDifference one) -> !one.meaning().startsWith(WIDER))).map(ToldDifference::sentence).toList());
    }

    private Group hidden() {
        return each("Changed without a new revision number", "changes under an old revision number", line -> line.since()
                .filter(since -> since.hidesAChange()).map(since -> List.of(since.inShort())).orElse(List.of()));
    }

    private Group findings(String title, String clean, Severity severity) {
        Map<String, List<String>> said = new LinkedHashMap<>();
        report.lines().forEach(line -> line.publication().of(severity).forEach(finding ->
                said.computeIfAbsent(line.publication().place(finding) + ": " + line.steps().inSentence(finding.message()), first -> new ArrayList<>()).add(line.publication().title())));
        report.libraries().forEach(checked -> checked.findings().stream().filter(finding -> finding.severity() == severity)
                .forEach(finding -> said.computeIfAbsent(Publication.placeInFile(finding) + ": " + finding.message(), first -> new ArrayList<>()).add("library " + checked.library().name())));
        return new Group(title, clean, together(said));
    }

    private Group calibration(LocalDate day) {
        Map<String, List<String>> said = new TreeMap<>();
        for (Line line : report.lines()) {
            for (Instrument instrument : new UsedDeclarations(line.steps().plan()).instruments().keySet()) {
                instrument.calibrationDue().filter(due -> due.value().isBefore(day.plusDays(NEAR_DAYS + 1))).ifPresent(due ->
                        said.computeIfAbsent((due.value().isBefore(day) ? "ran out on " : "runs out on ") + due.value() + ": "
                                + "\u201C" + PlainText.line(instrument.title().isBlank() ? instrument.name().text() : instrument.title()) + "\u201D", first -> new ArrayList<>()).add(line.publication().title()));
            }
        }
        return new Group("Calibration past or within " + NEAR_DAYS + " days of its end on " + day, "calibration past or near its end",
                said.entrySet().stream().map(entry -> entry.getKey() + ", used by " + of(entry.getValue())).toList());
    }

    private Group sources(LocalDate day) {
        LocalDate oldest = day.minusMonths(report.sourceAge());
        Map<String, Set<String>> said = new TreeMap<>();
        for (Line line : report.lines()) {
            UndatedSources.all(line.steps().plan()).filter(source -> source.dated().filter(date -> date.isBefore(oldest)).isPresent())
                    .forEach(source -> said.computeIfAbsent(source.document() + ", " + source.dated().get(), first -> new LinkedHashSet<>())
                            .add(line.publication().title()));
        }
        return new Group("Sources older than " + report.sourceAge() + " months on " + day, "sources older than " + report.sourceAge() + " months",
                said.entrySet().stream().map(entry -> entry.getKey() + ": " + of(entry.getValue())).toList());
    }

    /** Which procedure rests on which stands with each. */
    private Group undated() {
        List<String> documents = report.lines().stream().flatMap(line -> UndatedSources.of(line).stream()).distinct().sorted().toList();
        return new Group("Sources without a year or an edition", "sources without a year or an edition",
                documents.stream().map(document -> document + ".").toList());
    }

    private static List<String> faults(Line line) {
        List<String> points = new ArrayList<>();
        List<String> missed = line.summary().faults().stream().filter(fault -> !fault.isFound())
                .map(fault -> Attention.title(fault.fault())).toList();
        if (!missed.isEmpty()) {
            points.add("the steps do not lead to \"" + String.join("\", \"", missed) + "\".");
        }
        line.summary().groups().stream().filter(group -> !group.acknowledged()).map(group -> Attention.apart(group, line.steps())).forEach(points::add);
        return points;
    }

    private static List<String> untried(Line line) {
        QaSummary.Open open = line.summary().open();
        List<String> points = new ArrayList<>();
        add(points, "examples that end otherwise than they say", CardSteps.examples(open.examples()));
        if (!open.conclusions().isEmpty()) {
            points.add(Phrases.counted(open.conclusions().size(), "conclusion", "conclusions") + ": step " + line.steps().numbers(open.conclusions()) + ".");
        }
        if (!open.outcomes().isEmpty()) {
            points.add(Phrases.counted(open.outcomes().size(), "result", "results") + " at step " + line.steps().numbers(open.outcomes().stream()
                    .map(ExampleCoverage.StepOutcome::step).toList()) + "; its page has each.");
        }
        add(points, "no case of", line.summary().faults().stream().filter(fault -> !fault.hasExample())
                .map(fault -> "\"" + Attention.title(fault.fault()) + "\"").toList());
        return points;
    }

    private static void add(List<String> points, String what, List<String> names) {
        if (!names.isEmpty()) {
            points.add(what + " " + ReportTables.listed(names) + ".");
        }
    }

    private static List<String> unsaid(Line line) {
        List<String> points = new ArrayList<>();
        add(points, "no source for the limits of step", line.steps().named(line.summary().unsourced()));
        if (line.summary().untimed() > 0) {
            points.add(Phrases.counted(line.summary().untimed(), "step states", "steps state") + " no time.");
        }
        return points;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.quality.UnnamedCode;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.Testability;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Caution;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.tree.Json;
import org.faultwright.quantity.Exact;

/** The figures of the quality report for other programs. Numbers that are not counts are decimal strings; times are seconds. */
public final class QualityJson {
    private QualityJson() {
    }

    public static PublishedFiles of(ProcedureFolder folder) {
        QualityReport report = QualityReport.of(folder);
        Json json = new Json().put("schemaVersion", "1.0").put("caution", Caution.SENTENCES)
                .put("title", report.title()).putText("asOf", report.asOf().map(Object::toString)).put("findings", severities(Map.of(
                        Severity.ERROR, report.count(Severity.ERROR), Severity.WARNING, report.count(Severity.WARNING),
                        Severity.ADVICE, report.count(Severity.ADVICE))))
                .put("findingsByRule", together(report, line -> line.summary().byRule()))
                .put("unitsWritten", together(report, line -> line.summary().units()))
                .put("sources", together(report, line -> line.summary().sources()))
                .putAll("lookFirst", LookFirst.of(report).stream().filter(group -> !group.points().isEmpty()).toList(),
                        group -> new Json().put("title", group.title()).putTexts("points", group.points()))
                .putAll("libraries", report.libraries(), checked -> new Json().put("id", checked.library().name().text())
                        .putAll("findings", checked.findings(), finding -> new Json().put("rule", finding.rule())
                                .put("line", finding.at().line()).put("message", finding.message())))
                .putTexts("goneSinceRelease", report.gone().stream().map(one -> one.name().text()).toList())
                .putAll("leftOut", report.leftOut(), one -> new Json().put("id", one.procedure().name().text()).put("why", one.why()))
                .putAll("procedures", report.lines(), QualityJson::procedure);
        return new PublishedFiles(report.fileName(".json"), "application/json", json.bytes());
    }

    private static Json procedure(Line line) {
        QaSummary summary = line.summary();
        return new Json().put("id", line.publication().procedure().name().text())
                .put("title", line.publication().title())
                .put("status", line.publication().status().name().toLowerCase(Locale.ROOT))
                .put("digest", "sha256:" + line.publication().digest())
                .putTexts("attention", Attention.to(line))
                .put("findings", severities(summary.bySeverity())).put("findingsByRule", counts(summary.byRule()))
                .put("unitsWritten", counts(summary.units()))
                .put("sources", counts(summary.sources())).putTexts("stepsWithoutSource", steps(summary.unsourced()))
                .put("sinceRelease", line.since().map(QualityJson::since))
                .put("limitsWithSource", share(summary.limits())).put("codesWithResult", share(summary.codes()))
                .put("examplesThatPass", share(summary.examples())).put("resultsTried", share(summary.outcomes()))
                .put("conclusionsTried", share(summary.conclusions()))
                .putTexts("resultsUntried", summary.open().outcomes().stream().map(Object::toString).toList())
                .putTexts("conclusionsUntried", steps(summary.open().conclusions()))
                .putTexts("codesWithoutResult", summary.open().codes().stream().map(Object::toString).toList())
                .putAll("codesLeftAlone", summary.open().codes().stream().filter(UnnamedCode::isGrave).toList(), code -> new Json()
                        .put("step", code.step().name().text()).put("code", code.code().pattern().text()).put("meaning", code.code().meaning()))
                .putAll("madeLiveWhileOpen", summary.madeLive(), live -> new Json().put("step", live.place().label()).put("onCard", line.steps().number(live.place()))
                        .put("noteAboutShock", live.told()).put("mayHurt", live.dangerous()))
                .putTexts("examplesThatFail", summary.open().examples().stream().map(example -> example.title().text()).toList())
                .put("paths", summary.paths().map(QualityJson::paths))
                .putAll("faults", summary.faults(), QualityJson::fault)
                .putAll("notToldApart", summary.groups(), QualityJson::group)
                .put("testability", summary.testability().map(QualityJson::testability))
                .putAll("notesRead", summary.notes(), use -> new Json().put("note", use.note().name().text())
                        .put("word", use.note().word().name().toLowerCase(Locale.ROOT)).put("steps", use.steps()))
                .put("times", times(summary.times())).put("stepsWithoutTime", summary.untimed());
    }

    private static Json together(QualityReport report, Function<Line, Map<String, Integer>> of) {
        Json json = new Json();
        QualityOverview.byName(report, of).forEach((name, procedures) -> json.put(name, QualityOverview.sum(procedures)));
        return json;
    }

    private static Json since(SinceRelease since) {
        return new Json().put("heldAgainst", SinceRelease.record(since.earlier())).put("sameText", since.sameText())
                .put("sameRevision", since.sameRevision()).putAll("differences", since.differences(),
                        difference -> new Json().put("about", difference.kind().title()).put("what", difference.what())
                                .put("was", difference.was()).put("now", difference.now())
                                .putText("meaning", Optional.of(difference.meaning()).filter(words -> !words.isEmpty())));
    }

    private static Json severities(Map<Severity, Integer> counts) {
        Json json = new Json();
        for (Severity severity : Severity.values()) {
            json.put(severity.name().toLowerCase(Locale.ROOT), counts.getOrDefault(severity, 0));
        }
        return json;
    }

    private static Json counts(Map<String, Integer> counts) {
        Json json = new Json();
        counts.forEach(json::put);
        return json;
    }

    private static Json share(QaSummary.Share share) {
        return new Json().put("some", share.some()).put("all", share.all());
    }

    private static Json paths(PathReport paths) {
        return new Json().put("steps", paths.steps()).put("stepsReached", paths.stepsReached())
                .put("results", paths.outcomes()).put("resultsTaken", paths.outcomesTaken())
                .put("states", paths.states()).put("allStates", paths.complete()).put("boundsCounted", paths.exact())
                .putTexts("always", paths.always().stream().map(Name::text).toList())
                .putText("sequences", paths.paths().map(Object::toString))
                .putText("slowestSeconds", paths.worstSeconds().map(Exact::toString))
                .putTexts("slowestPath", steps(paths.slowest())).putTexts("longestPath", steps(paths.longest()));
    }

    private static List<String> steps(List<? extends Step> steps) {
        return steps.stream().map(step -> step.name().text()).toList();
    }

    private static List<String> steps(Optional<List<PathStep>> path) {
        return path.orElse(List.of()).stream().map(PathStep::toString).toList();
    }

    private static Json fault(QaSummary.FaultLine fault) {
        return new Json().put("id", fault.fault().name().text()).put("share", fault.weight().toString())
                .put("found", fault.isFound()).put("groupSize", fault.groupSize())
                .put("reportedWithOthers", fault.reportedWithOthers().isPresent()).put("example", fault.hasExample())
                .put("times", times(fault.times()));
    }

    private static Json group(QaSummary.GroupLine group) {
        return new Json().putTexts("faults", names(group.faults())).put("acknowledged", group.acknowledged())
                .putTexts("wouldSeparate", steps(group.unused())).putTexts("notStatedAt", steps(group.silent()));
    }

    private static List<String> names(List<Fault> faults) {
        return faults.stream().map(fault -> fault.name().text()).toList();
    }

    private static Json testability(Testability found) {
        return new Json().put("detected", found.detected().toString()).put("isolatedToOne", found.isolated(1).toString())
                .put("isolatedToTwo", found.isolated(2).toString());
    }

    private static Json times(TimeStudy.Figure figure) {
        Optional<String> expected = figure.expected().map(Exact::toString);
        return new Json().putText("expectedSeconds", expected).putText("worstSeconds", figure.worst().map(Exact::toString))
                .put("sharesAssumed", figure.assumed());
    }
}

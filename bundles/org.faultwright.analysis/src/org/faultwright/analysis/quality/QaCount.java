/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.quality;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.Ambiguity;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.analysis.trace.Testability;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;

/** Counts what a {@link QaSummary} tells. Steps of its routines count with its own, those of libraries that it performs among them. */
final class QaCount {
    private final Subject subject;
    private final Procedure procedure;
    private final List<StepGraph> graphs;
    private final List<Step> steps;

    QaCount(Subject subject, Procedure procedure) {
        this.subject = subject;
        this.procedure = procedure;
        this.graphs = performed(procedure);
        this.steps = graphs.stream().map(StepGraph::steps).flatMap(List::stream).toList();
    }

    /** The procedure, its own routines, and those of its libraries that it performs, directly or through another. */
    private static List<StepGraph> performed(Procedure procedure) {
        List<StepGraph> graphs = new ArrayList<>(procedure.graphs());
        for (int i = 0; i < graphs.size(); i++) {
            for (Step step : graphs.get(i).steps()) {
                if (step instanceof Step.Perform perform) {
                    perform.routine().flatMap(procedure.scope()::routine).filter(routine -> !graphs.contains(routine)).ifPresent(graphs::add);
                }
            }
        }
        return graphs;
    }

    QaSummary summary(List<Finding> findings) {
        ExampleCoverage coverage = ExampleCoverage.in(subject).orElseThrow();
        TimeStudy times = TimeStudy.in(subject).orElseThrow();
        int codes = steps.stream().mapToInt(step -> indicator(step).map(one -> one.codes().size()).orElse(0)).sum();
        List<UnnamedCode> unnamed = unnamed();
        Map<Severity, Integer> bySeverity = new EnumMap<>(Severity.class);
        findings.forEach(finding -> bySeverity.merge(finding.severity(), 1, Integer::sum));
        return new QaSummary(bySeverity, mostFirst(findings.stream().map(Finding::rule)), units(), limits(), sources(),
                unsourced(), share(codes - unnamed.size(), codes), new QaSummary.Open(coverage.untried(), coverage.unreached(), unnamed,
                        coverage.runs().stream().filter(run -> !run.passes()).map(ExampleRun::example).toList()),
                ProcedurePaths.of(subject).filter(paths -> paths.map().begin().isPresent()).map(PathReport::of),
                faults(times), groups(), Testability.in(subject),
                share(coverage.runs().stream().filter(ExampleRun::passes).count(), coverage.runs().size()),
                share(coverage.tried().size(), coverage.tried().size() + coverage.untried().size()),
                share(coverage.reached().size(), coverage.reached().size() + coverage.unreached().size()),
                notes(), times.inAll(), times.untimed().size(), MadeLive.of(subject));
    }

    private static QaSummary.Share share(long some, int all) {
        return new QaSummary.Share((int) some, all);
    }

    private static Map<String, Integer> mostFirst(Stream<String> names) {
        Map<String, Integer> counted = new LinkedHashMap<>();
        names.forEach(name -> counted.merge(name, 1, Integer::sum));
        return counted.entrySet().stream().sorted(Map.Entry.<String, Integer>comparingByValue().reversed()
                .thenComparing(Map.Entry.comparingByKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, LinkedHashMap::new));
    }

    private Map<String, Integer> units() {
        Stream<Quantity> inSteps = steps.stream().flatMap(step -> quantities(step).stream());
        Stream<Quantity> carried = procedure.own().points().stream().flatMap(point -> Stream.concat(
                point.carries().map(carries -> carries.upTo().value()).stream(),
                point.sourceResistance().map(Written::value).stream()));
        Stream<Quantity> shown = Stream.concat(procedure.faults().stream().map(Fault::shows),
                procedure.examples().stream().map(Example::shows)).flatMap(List::stream)
                .map(Showing::possible).flatMap(List::stream).flatMap(possible -> possible.reading().stream());
        Stream<Quantity> allowed = procedure.examples().stream().flatMap(example -> example.within().stream())
                .map(Written::value);
        return mostFirst(Stream.of(inSteps, carried, shown, allowed).flatMap(Function.identity())
                .map(quantity -> quantity.unit().symbol()).filter(symbol -> !symbol.isEmpty()));
    }

    private static List<Quantity> quantities(Step step) {
        List<Quantity> found = new ArrayList<>(Stream.concat(step.frame().takes().stream(), step.frame().waits().stream())
                .map(Written::value).toList());
        expected(step).ifPresent(expected -> found.addAll(expected.limit().value().quantities()));
        bands(step).forEach(band -> found.addAll(band.limit().value().quantities()));
        if (step instanceof Step.Measure measure) {
            measure.range().ifPresent(range -> found.add(range.value()));
            measure.unitDeviation().ifPresent(spread -> found.add(spread.value()));
            measure.uncertainties().forEach(part -> found.add(part.halfWidth().value()));
        }
        return found;
    }

    private static Optional<Step.Expectation> expected(Step step) {
        return step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
    }

    private static List<Outcome.Band> bands(Step step) {
        return step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(Outcome.Band.class::cast).toList();
    }

    private static int limits(Step step) {
        return expected(step).map(e -> 1).orElse(0) + bands(step).size();
    }

    private static Optional<Source> source(Step step) {
        return step.frame().source().or(() -> expected(step).flatMap(Step.Expectation::source));
    }

    private QaSummary.Share limits() {
        return share(steps.stream().filter(step -> source(step).isPresent()).mapToInt(QaCount::limits).sum(),
                steps.stream().mapToInt(QaCount::limits).sum());
    }

    private Map<String, Integer> sources() {
        Stream<Source> ofLimits = steps.stream().flatMap(step -> source(step).stream()
                .flatMap(source -> Collections.nCopies(limits(step), source).stream()));
        Stream<Source> ofCodes = indicators().flatMap(indicator -> indicator.source().stream());
        return mostFirst(Stream.concat(ofLimits, ofCodes).map(source -> source.document()
                + source.dated().map(date -> " (" + date + ")").orElse("")));
    }

    private Stream<Indicator> indicators() {
        return steps.stream().flatMap(step -> indicator(step).stream()).distinct();
    }

    private List<Step> unsourced() {
        return steps.stream().filter(step -> limits(step) > 0 && source(step).isEmpty()).toList();
    }

    private Optional<Indicator> indicator(Step step) {
        return step instanceof Step.Observe observe ? observe.indicator().flatMap(subject.scope()::indicator)
                : Optional.empty();
    }

    private List<UnnamedCode> unnamed() {
        List<UnnamedCode> unnamed = new ArrayList<>();
        graphs.forEach(graph -> graph.steps().forEach(step -> indicator(step)
                .ifPresent(indicator -> unnamed.addAll(UnnamedCode.of(step, indicator, graph, procedure)))));
        return List.copyOf(unnamed);
    }

    private List<QaSummary.GroupLine> groups() {
        Ambiguity ambiguity = Ambiguity.in(subject).orElseThrow();
        return ambiguity.groups().stream().map(group -> new QaSummary.GroupLine(group.faults(), group.acknowledged(),
                ambiguity.unusedThatSeparate(group), ambiguity.silentForSome(group))).toList();
    }

    private List<QaSummary.FaultLine> faults(TimeStudy times) {
        FaultWalks walks = FaultWalks.in(subject).orElseThrow();
        Ambiguity ambiguity = Ambiguity.in(subject).orElseThrow();
        List<ExampleRun> runs = ExampleCoverage.in(subject).orElseThrow().runs();
        return IntStream.range(0, walks.table().size()).mapToObj(i -> {
            Fault fault = walks.table().faults().get(i);
            boolean tried = runs.stream().anyMatch(run -> run.passes()
                    && run.example().of().filter(of -> of.text().equals(fault.name().text())).isPresent());
            return new QaSummary.FaultLine(fault, walks.table().weight(i), walks.of(fault).reachesFinding(),
                    ambiguity.groupSize(fault), tried, times.of(fault), walks.of(fault).endings().stream()
                            .filter(FaultWalk.Ending::finds).map(FaultWalk.Ending::conclusion).distinct().toList());
        }).toList();
    }

    private List<QaSummary.NoteUse> notes() {
        Map<String, List<Name>> read = steps.stream().flatMap(step -> step.frame().notes().stream())
                .collect(Collectors.groupingBy(Name::text, LinkedHashMap::new, Collectors.toList()));
        List<QaSummary.NoteUse> used = new ArrayList<>();
        read.values().forEach(names -> subject.scope().note(names.get(0))
                .ifPresent(note -> used.add(new QaSummary.NoteUse(note, names.size()))));
        used.sort(Comparator.comparing((QaSummary.NoteUse use) -> use.note().word()));
        return List.copyOf(used);
    }
}

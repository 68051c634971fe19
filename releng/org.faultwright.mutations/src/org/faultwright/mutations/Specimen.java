/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A sound procedure with its libraries, to put defects into. */
final class Specimen {
    /** Held against due dates; every demo instrument is in date then. */
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

    /** What {@link HarmlessChanges} puts behind a name. */
    static final String RENAMED = "Renamed";

    private final Procedure procedure;
    private final Set<String> known = new LinkedHashSet<>();
    private final ConditionLater later;
    private final FaultWalks walks;

    private Specimen(Procedure procedure) {
        this.procedure = procedure;
        this.later = new ConditionLater(ProcedurePaths.of(procedure));
        this.walks = FaultWalks.of(procedure);
        check(Map.of()).forEach(finding -> known.add(key(finding)));
    }

    /** @throws IOException if the file cannot be read */
    static Specimen read(Path file) throws IOException {
        ProcedureReader reader = ProcedureReader.overFiles();
        if (reader.read(file) instanceof Procedure procedure) {
            return new Specimen(WrittenInFull.of(procedure, reader));
        }
        throw new IllegalArgumentException(file + " is a library; defects are put into procedures.");
    }

    Procedure procedure() {
        return procedure;
    }

    ConditionLater later() {
        return later;
    }

    /** Where each fault of the table gets to in the unchanged tree. */
    FaultWalks walks() {
        return walks;
    }

    String name() {
        return procedure.name().text();
    }

    /** Its own steps and those of its own routines. */
    List<Step> ownSteps() {
        return procedure.graphs().stream().flatMap(graph -> graph.writtenSteps().stream()).toList();
    }

    /** Its own steps and those of every routine it performs, the libraries' too. */
    List<Step> steps() {
        return graphs().stream().flatMap(graph -> graph.writtenSteps().stream()).toList();
    }

    /** The procedure and every routine that it performs. */
    List<StepGraph> graphs() {
        Set<StepGraph> graphs = new LinkedHashSet<>(List.of(procedure));
        for (boolean grown = true; grown;) {
            List<Routine> performed = graphs.stream().flatMap(graph -> graph.steps().stream())
                    .filter(Step.Perform.class::isInstance).flatMap(step -> ((Step.Perform) step).routine().stream())
                    .flatMap(name -> procedure.scope().routine(name).stream()).toList();
            grown = graphs.addAll(performed);
        }
        return List.copyOf(graphs);
    }

    /** Its own declarations, then its libraries'. */
    Stream<Declarations> declarations() {
        return Stream.concat(Stream.of(procedure.own()), procedure.libraries().stream().map(Library::own));
    }

    StepGraph graphOf(Step step) {
        return graphs().stream().filter(graph -> graph.steps().contains(step)).findFirst().orElseThrow();
    }

    /** Every word that leads to a step or exit of that name in the graph. */
    static Stream<Name> leadingTo(Name name, StepGraph graph) {
        return Stream.concat(graph.begin().stream(), graph.writtenSteps().stream().flatMap(step -> step.outcomes().stream())
                .flatMap(outcome -> Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream())))
                .filter(target -> ClosingStep.written(target.text()).equals(name.text()));
    }

    /** What is found in the changed text, and in its libraries, that was not found before the change. */
    List<Finding> newFindings(Seed seed) {
        return check(seed.texts()).stream().filter(finding -> !known.contains(key(finding))).toList();
    }

    /** The procedure with the change made. */
    Procedure changed(Seed seed) {
        return (Procedure) reader(libraries(seed.texts())).read(text(procedure.source(), seed.texts()));
    }

    private Map<String, SourceText> libraries(Map<String, String> changed) {
        Map<String, SourceText> libraries = new HashMap<>();
        procedure.libraries().forEach(library -> libraries.put(library.name().text(), text(library.source(), changed)));
        return libraries;
    }

    private static ProcedureReader reader(Map<String, SourceText> libraries) {
        return new ProcedureReader((name, fromFile) -> Optional.ofNullable(libraries.get(name)));
    }

    private List<Finding> check(Map<String, String> changed) {
        Map<String, SourceText> libraries = libraries(changed);
        ProcedureReader reader = reader(libraries);
        Checker checker = new Checker(RuleSet.all(), Optional.of(TODAY));
        List<Finding> findings = new ArrayList<>(own(checker, reader.read(text(procedure.source(), changed))));
        if (changed.isEmpty() || libraries.values().stream().anyMatch(library -> changed.containsKey(library.name()))) {
            libraries.values().forEach(library -> findings.addAll(own(checker, reader.read(library))));
        }
        return findings;
    }

    private static SourceText text(SourceText source, Map<String, String> changed) {
        return new SourceText(source.name(), changed.getOrDefault(source.name(), source.content()));
    }

    private static List<Finding> own(Checker checker, Document document) {
        return checker.check(document).stream()
                .filter(finding -> finding.at().source().name().equals(document.source().name())).toList();
    }

    /** The same after a step was renamed, or moved within the text: some messages list names in the order of the text. */
    private static String key(Finding finding) {
        String message = finding.message().replaceFirst("; not tried: .*", "").replace(RENAMED, "");
        return finding.rule() + " " + finding.at().source().name() + " " + message;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;

/** A text in which each step says itself what its set-up asks for and which routine it follows, so that each of them can be seeded with a defect. */
final class WrittenInFull {
    private WrittenInFull() {
    }

    /** A released one is released again, as it is then. */
    static Procedure of(Procedure procedure, ProcedureReader reader) {
        SourceText whole = of(procedure);
        Procedure full = (Procedure) reader.read(whole);
        Optional<String> digest = procedure.revision().flatMap(Revision::digest).filter(ContentDigest.of(procedure)::equalsIgnoreCase);
        return digest.map(stated -> (Procedure) reader.read(new SourceText(whole.name(), whole.content().replace(stated, ContentDigest.of(full))))).orElse(full);
    }

    private static SourceText of(Procedure procedure) {
        List<Fix.Edit> edits = new ArrayList<>();
        procedure.graphs().stream().flatMap(graph -> graph.writtenSteps().stream()).filter(step -> step.at().source() == procedure.source())
                .forEach(step -> edits.addAll(edits(step, procedure)));
        return new SourceText(procedure.source().name(), edits.isEmpty() ? procedure.source().content() : new Fix("", edits).applied());
    }

    private static List<Fix.Edit> edits(Step step, Procedure procedure) {
        Stream<Fix.Edit> needs = step.frame().setUps().stream().flatMap(name -> procedure.scope().setUp(name).stream().map(setUp -> SpecimenEdits.replace(
                SpecimenEdits.withKeywords(name.at(), "unit"), "needs " + setUp.settings().stream().map(one -> one.condition() + " " + one.value())
                        .collect(Collectors.joining(", ")))));
        Stream<Fix.Edit> routine = step instanceof Step.Perform perform
                ? perform.namesake().stream().map(name -> new Fix.Edit(name.at(), " by " + name)) : Stream.of();
        return Stream.concat(needs, routine).toList();
    }
}

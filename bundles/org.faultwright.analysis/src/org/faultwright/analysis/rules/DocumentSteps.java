/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Step;

/** The steps of a document, those of its own routines among them. */
final class DocumentSteps {
    private final List<Step> all;

    private DocumentSteps(Subject subject) {
        all = subject.graphs().stream().flatMap(graph -> graph.steps().stream()).toList();
    }

    static List<Step> of(Subject subject) {
        return subject.shared(DocumentSteps.class, DocumentSteps::new).all;
    }

    /** Of a table of readings each one as a measurement of its own. */
    static <T extends Step> Stream<T> of(Subject subject, Class<T> kind) {
        return of(subject).stream().flatMap(DocumentSteps::single).filter(kind::isInstance).map(kind::cast);
    }

    private static Stream<? extends Step> single(Step step) {
        return step instanceof Step.Measure measure ? measure.readings().stream() : Stream.of(step);
    }
}

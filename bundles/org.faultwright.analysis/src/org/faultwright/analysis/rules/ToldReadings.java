/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Quantity;

/** The readings with a unit that the fault table and the examples tell. */
final class ToldReadings {
    /** @param at the words of the reading */
    record ToldReading(Step step, Quantity reading, SourceRange at) {
    }

    private ToldReadings() {
    }

    static List<ToldReading> of(Subject subject) {
        return subject.procedure().stream().flatMap(procedure -> Stream.concat(
                procedure.faults().stream().flatMap(fault -> fault.shows().stream()),
                procedure.examples().stream().flatMap(example -> example.shows().stream()))
                .flatMap(showing -> told(showing, procedure))).toList();
    }

    static Stream<ToldReading> told(Showing showing, Procedure procedure) {
        return procedure.step(showing.step()).stream().flatMap(step -> showing.possible().stream()
                .filter(possible -> possible.reading().filter(reading -> reading.unit().isKnown()).isPresent())
                .map(possible -> new ToldReading(step, possible.reading().get(), possible.words().at())));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.WholeLines;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Takes a fault out of a procedure, with what conclusions and examples say of it. Remarks stay. */
public final class FaultRemoval {
    private static final String FINDS = "finds";

    private final Procedure procedure;
    private final Fault fault;
    private final List<Fix.Edit> edits = new ArrayList<>();
    private final List<String> told = new ArrayList<>();

    private FaultRemoval(Procedure procedure, Fault fault) {
        this.procedure = procedure;
        this.fault = fault;
    }

    /** The change, with a line for everything that goes beside the fault itself; without one where something else would lose its sense. */
    public static ProposedChange of(Procedure procedure, Fault fault) {
        return new FaultRemoval(procedure, fault).proposed();
    }

    private ProposedChange proposed() {
        Optional<String> refused = twice().or(this::ledTo).or(this::inAVariation);
        if (refused.isPresent()) {
            return new ProposedChange(refused.get(), List.of(), Optional.empty());
        }
        procedure.writtenSteps().forEach(step -> {
            if (step instanceof Step.Conclude end) {
                withoutIn(end);
            }
        });
        examples().forEach(example -> {
            takeOut(example.at());
            told.add("The example \"" + example.title() + "\" goes with it; it is a case of that fault.");
        });
        takeOut(fault.at());
        String words = fault.title().isBlank() ? fault.name().text() : fault.title();
        return new ProposedChange("Take out \"" + words + "\".", told, Optional.of(new Fix("Take out \"" + fault.name() + "\"", edits)));
    }

    private List<Example> examples() {
        return procedure.examples().stream().filter(example -> example.of().filter(of -> of.text().equals(fault.name().text())).isPresent()).toList();
    }

    private Optional<String> twice() {
        return procedure.faults().stream().filter(one -> one.name().text().equals(fault.name().text())).count() > 1
                ? Optional.of("There are two faults named \"" + fault.name() + "\"; name one of them otherwise first.") : Optional.empty();
    }

    /** An arrow that leads to the fault would lead nowhere. */
    private Optional<String> ledTo() {
        boolean isUnderstood = procedure.step(fault.name()).filter(Step::isUnderstood).isPresent();
        return procedure.writtenSteps().stream().filter(step -> isUnderstood && step.outcomes().stream().anyMatch(outcome -> Stream.concat(outcome.target().stream(),
                outcome.repeat().map(Outcome.Repeat::otherwise).stream()).anyMatch(target -> ClosingStep.written(target.text()).equals(fault.name().text())))).findFirst()
                .map(step -> "\"" + step.name() + "\" in line " + step.name().at().line() + " leads to \"" + fault.name()
                        + "\". Lead it elsewhere in the text first, then take the fault out.");
    }

    /** What stands around it is a case of another fault, or the other way round. */
    private Optional<String> inAVariation() {
        return examples().stream().filter(example -> example.variation() || procedure.examples().stream().anyMatch(other -> other != example
                && example.at().offset() <= other.at().offset() && other.at().end() <= example.at().end())).findFirst()
                .map(example -> "The example \"" + example.title() + "\" in line " + example.at().line()
                        + " hangs together with others. Change it in the text first, then take the fault out.");
    }

    private boolean names(Name name) {
        return name.text().equals(fault.name().text());
    }

    /** With the comma that parts it from its neighbour, or with the word before it. */
    private void withoutIn(Step.Conclude end) {
        List<Name> finds = end.finds();
        for (int i = 0; i < finds.size(); i++) {
            if (names(finds.get(i)) && finds.size() == 1) {
                SourceRange at = finds.get(0).at();
                String before = Remarks.blanked(at.source().content().substring(0, at.offset())).stripTrailing();
                int from = before.endsWith(FINDS) ? before.length() - FINDS.length() : at.offset();
                takeOut(new SourceRange(at.source(), from, at.end() - from));
                told.add("\"" + end.name() + "\" finds it no more. Say in the text what it finds, or lead elsewhere what leads to it.");
            } else if (names(finds.get(i))) {
                SourceRange at = finds.get(i).at();
                int from = i == 0 ? at.offset() : finds.get(i - 1).at().end();
                int to = i == 0 ? finds.get(1).at().offset() : at.end();
                SourceRange gone = new SourceRange(at.source(), from, to - from);
                String remarks = Remarks.in(gone.text()).stream().map(remark -> " " + remark + "\n        ").collect(Collectors.joining());
                edits.add(new Fix.Edit(gone, Fix.inLinesAs(gone.source().content(), remarks)));
                told.add("\"" + end.name() + "\" finds it no more.");
            }
        }
    }

    private void takeOut(SourceRange block) {
        SourceRange lines = WholeLines.of(block);
        boolean isAmongWords = lines.equals(block) && block.source().content().startsWith(" ", block.end());
        SourceRange gone = isAmongWords ? new SourceRange(block.source(), block.offset(), block.length() + 1) : lines;
        edits.add(new Fix.Edit(gone, Fix.inLinesAs(gone.source().content(), Remarks.keptFrom(gone.text(), WholeLines.indent(block)))));
    }
}

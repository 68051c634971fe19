/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.steps.StepChange;
import org.faultwright.analysis.steps.StepEdits;
import org.faultwright.analysis.table.FaultRemoval;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.editor.LostProtection;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** A row or column that goes, with all that the text says of it, tried in full for its author to look at first. */
final class RemovalPreview {
    private RemovalPreview() {
    }

    static ProposedChange of(LiveText live, SheetRow row) {
        Procedure procedure = (Procedure) live.text().document();
        return procedure.faults().stream().filter(fault -> row instanceof SheetRow.OfFault of && fault.name().text().equals(of.name())).findFirst()
                .map(fault -> tried(live, FaultRemoval.of(procedure, fault), true)).orElseGet(() -> nothing(FaultTableView.GONE));
    }

    static ProposedChange of(LiveText live, SheetColumn column) {
        Procedure procedure = (Procedure) live.text().document();
        Optional<StepChange> change = procedure.writtenSteps().stream().filter(step -> column instanceof SheetColumn.OfStep of && step.name().text()
                .equals(of.name())).findFirst().map(step -> new StepEdits(procedure, procedure).takeOut(step));
        if (change.isEmpty()) {
            return nothing("That step is not in the text any more.");
        }
        if (change.get() instanceof StepChange.Refused refused) {
            return nothing(refused.sentence());
        }
        StepChange.Offered offered = (StepChange.Offered) change.get();
        return tried(live, new ProposedChange(offered.fix().title() + ".", List.of(), Optional.of(offered.fix())), offered.holds(after(live, offered.fix())));
    }

    private static ProposedChange nothing(String why) {
        return new ProposedChange(why, List.of(), Optional.empty());
    }

    private static Document after(LiveText live, Fix fix) {
        return LiveTexts.get().services().document(new SourceText(live.text().source().name(), fix.applied()));
    }

    private static ProposedChange tried(LiveText live, ProposedChange change, boolean holds) {
        if (change.change().isEmpty()) {
            return change;
        }
        Fix fix = change.change().get();
        Document after = after(live, fix);
        if (!holds || !after.problems().isEmpty()) {
            return nothing("This cannot be taken out without changing something else; do it in the text.");
        }
        List<Finding> added = LiveTexts.get().services().added(fix);
        List<String> reasons = new ArrayList<>();
        LostProtection.of(live.text().document(), after, added).forEach(line -> reasons.add("This takes protection away: " + line));
        reasons.addAll(change.reasons());
        reasons.add(added.isEmpty() ? "Nothing new is found in the text after it." : "New in the findings after it: " + Severity.counted(added) + ".");
        added.forEach(finding -> reasons.add("    " + finding.message()));
        return new ProposedChange(change.outcome(), reasons, change.change());
    }
}

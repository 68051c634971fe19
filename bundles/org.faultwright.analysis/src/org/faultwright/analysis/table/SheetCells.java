/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.faults.FaultSignature;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** What each cell of the table holds, and what there is to say of it. */
final class SheetCells {
    private final FaultTable table;
    private final FaultWalks walks;
    private final boolean laidOut;
    private final List<Finding> grave;
    private final Map<String, Step> steps = new HashMap<>();

    SheetCells(FaultTable table, FaultWalks walks, boolean laidOut, List<Finding> found) {
        this.table = table;
        this.walks = walks;
        this.laidOut = laidOut;
        this.grave = found.stream().filter(finding -> finding.severity() != Severity.ADVICE).toList();
        table.steps().forEach(step -> steps.putIfAbsent(step.name().text(), step));
    }

    /** By the name of the step. */
    Map<String, FaultSheet.Cell> of(Fault fault, List<FaultSheet.Column> columns) {
        FaultWalk walk = walks.of(fault);
        Map<String, Showing> written = new HashMap<>();
        fault.shows().forEach(showing -> written.putIfAbsent(showing.step().text(), showing));
        List<Finding> own = grave.stream().filter(finding -> isIn(finding.at(), fault.at())).toList();
        Map<String, FaultSheet.Cell> cells = new HashMap<>();
        for (FaultSheet.Column column : columns) {
            List<String> against = new ArrayList<>(fault.shows().stream().filter(showing -> showing.step().text().equals(column.name()))
                    .flatMap(showing -> own.stream().filter(finding -> isIn(finding.at(), showing.at()))).map(Finding::message).distinct().toList());
            walk.parting().filter(parting -> walk.isComplete() && parting.at().name().text().equals(column.name()))
                    .ifPresent(parting -> against.add(parts(fault, parting)));
            cells.put(column.name(), cell(fault, walk, column, Optional.ofNullable(written.get(column.name())), against));
        }
        return cells;
    }

    private static boolean isIn(SourceRange inner, SourceRange outer) {
        return inner.source().name().equals(outer.source().name()) && inner.offset() >= outer.offset() && inner.end() <= outer.end();
    }

    private static String parts(Fault fault, FaultWalk.Parting parting) {
        return (parting.outcome().isEmpty() ? "What it shows here" : '"' + parting.outcome() + "\" here") + " leads "
                + parting.leadsTo().map(step -> "to \"" + step.name() + '"').orElse("nowhere") + ", and no way from there comes to where \""
                + fault.name() + "\" is found.";
    }

    private FaultSheet.Cell cell(Fault fault, FaultWalk walk, FaultSheet.Column column, Optional<Showing> written, List<String> against) {
        String names = '"' + fault.name().text() + "\" at \"" + column.name() + "\": ";
        String because = against.isEmpty() ? "" : " " + String.join(" ", against);
        if (written.isPresent()) {
            String words = words(written.get());
            return new FaultSheet.Cell(against.isEmpty() ? FaultSheet.State.WRITTEN : FaultSheet.State.AGAINST, words, true, names + words + "." + because);
        }
        Optional<Step> step = Optional.ofNullable(steps.get(column.name()));
        FaultSignature follows = step.map(one -> table.cell(fault, one)).orElse(FaultSignature.SILENT);
        if (!follows.isSilent()) {
            String words = String.join(" or ", follows.outcomes());
            return new FaultSheet.Cell(against.isEmpty() ? FaultSheet.State.NORMAL : FaultSheet.State.AGAINST, words, false,
                    names + words + ", which is normal; nothing else is written." + because);
        }
        if (!against.isEmpty()) {
            return new FaultSheet.Cell(FaultSheet.State.AGAINST, "", false, names + "nothing is written." + because);
        }
        if (column.ofRepair() || column.step().filter(one -> one.frame().verifies().isPresent()).isPresent()) {
            return new FaultSheet.Cell(FaultSheet.State.EMPTY, "", false, names + "nothing is written; it passes once the remedy is done.");
        }
        boolean comes = !laidOut || column.step().map(walk::shownAt).filter(shown -> !shown.isEmpty()).isPresent();
        return comes ? new FaultSheet.Cell(FaultSheet.State.OPEN, "", false, names + "nothing is written, so that anything may show.")
                : new FaultSheet.Cell(FaultSheet.State.EMPTY, "", false, names + "nothing is written, and the steps do not lead this fault there.");
    }

    /** As one would type it into the cell. */
    static String words(Showing showing) {
        return showing.possible().stream().map(possible -> TypedCell.plain(possible.words().text())
                + possible.share().map(share -> " " + share + " %").orElse("")).collect(Collectors.joining(" or "));
    }
}

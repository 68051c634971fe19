/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.BenchInterview;
import org.faultwright.language.beginning.ImportedLines.Range;
import org.faultwright.language.beginning.Interview.Meter;
import org.faultwright.language.beginning.TableKind;
import org.faultwright.language.beginning.Tables;
import org.faultwright.workbench.look.LabelledFields;

/** Which bench, and what is read with there. */
final class LibraryPage extends QuestionPage {
    private Text bench;
    private Text from;
    private Text to;
    private Text instrument;
    private Label ranges;
    private List<String> lines = Meter.USUAL.ranges();

    LibraryPage() {
        super("The bench", "Which bench is it for, and what is read with there?");
    }

    @Override
    void create(Composite page, QuestionDialog dialog) {
        bench = LabelledFields.text(page, "The bench", "North bench, small appliances", dialog::changed);
        from = LabelledFields.text(page, "Its temperature, from (degC)", "18", dialog::changed);
        to = LabelledFields.text(page, "to (degC)", "28", dialog::changed);
        instrument = LabelledFields.text(page, "An instrument", "make and kind", dialog::changed);
        ranges = LabelledFields.hint(page, "");
        LabelledFields.push(page, "Its &ranges from a table\u2026", () -> {
            TableDialog asked = new TableDialog(dialog.getShell(), TableKind.RANGES, Tables::ranges, TableDialog.UNNAMED);
            asked.open();
            asked.<Range>taken().ifPresent(taken -> {
                lines = taken.stream().map(Range::line).toList();
                tell();
                dialog.changed();
            });
        });
        LabelledFields.hint(page, "What the procedures of a bench share stands in a library: instruments, safety notes, states of the set-up, routines. "
                + "More is written into the text afterwards.");
        tell();
    }

    private void tell() {
        ranges.setText(lines.size() + (lines.equals(Meter.USUAL.ranges()) ? " ranges of an ordinary meter; put in those of yours." : " ranges."));
    }

    BenchInterview asked(String name, DangersPage dangers) {
        return new BenchInterview(name, bench.getText(), from.getText(), to.getText(), new Meter(instrument.getText(), lines), dangers.dangers());
    }

    String bench() {
        return bench.getText();
    }

    @Override
    String problem() {
        return BenchInterview.isTemperature(from.getText()) && BenchInterview.isTemperature(to.getText()) ? ""
                : "A temperature is a number of degrees Celsius, such as 18.";
    }

    @Override
    void setFocus() {
        bench.setFocus();
    }
}

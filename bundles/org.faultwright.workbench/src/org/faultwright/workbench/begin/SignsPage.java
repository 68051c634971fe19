/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.FaultSign;
import org.faultwright.language.beginning.HeadedTable;
import org.faultwright.language.beginning.ImportedLines;
import org.faultwright.language.beginning.ImportedLines.Code;
import org.faultwright.language.beginning.ImportedLines.FaultLine;
import org.faultwright.language.beginning.ImportedLines.Range;
import org.faultwright.language.beginning.ImportedLines.StepKind;
import org.faultwright.language.beginning.ImportedLines.StepLine;
import org.faultwright.language.beginning.Interview;
import org.faultwright.language.beginning.Interview.Meter;
import org.faultwright.language.beginning.LimitWords;
import org.faultwright.language.beginning.TableKind;
import org.faultwright.language.beginning.Tables;
import org.faultwright.language.beginning.UnusableTable;
import org.faultwright.workbench.look.LabelledFields;

/** How one would tell: looks, codes, readings. */
final class SignsPage extends QuestionPage {
    private static final List<String> ON_OFF = List.of("on", "off");
    private static final List<String> STATES = List.of("off, open", "on, open", "on, closed", "off, closed");

    private AnswerRows looks;
    private Text lamp;
    private Text document;
    private AnswerRows codes;
    private AnswerRows readings;
    private Label with;
    private Meter meter = Meter.USUAL;

    SignsPage() {
        super("Signs", "How would you tell?");
    }

    @Override
    void create(Composite page, QuestionDialog dialog) {
        LabelledFields.heading(page, "Look or listen");
        looks = new AnswerRows(page, "Look", List.of(AnswerRows.Column.words("Question", "Does the fan turn?", 22), AnswerRows.Column.words("As it should be", "turns", 9),
                AnswerRows.Column.words("Else (commas between)", "stands, rattles", 13), new AnswerRows.Column("Switched", "", 4, ON_OFF),
                AnswerRows.Column.words("Min", "1", 3)), dialog::changed, dialog::grown);
        LabelledFields.push(page, "From a list of &steps\u2026", () -> stepsFromTable(dialog, TableDialog.UNNAMED));
        LabelledFields.heading(page, "Codes of a lamp or a read-out");
        lamp = LabelledFields.text(page, "Which one, and where", "Amber lamp on the back", dialog::changed);
        document = LabelledFields.text(page, "Document with the table", "Service sheet, page 4", dialog::changed);
        codes = new AnswerRows(page, "Code", List.of(AnswerRows.Column.words("Code", "3 blinks", 9), AnswerRows.Column.words("What it means", "Head too cold", 24)),
                dialog::changed, dialog::grown);
        LabelledFields.push(page, "Codes from a ta&ble\u2026", () -> codesFromTable(dialog, TableDialog.UNNAMED));
        LabelledFields.heading(page, "Readings");
        readings = new AnswerRows(page, "Reading", List.of(AnswerRows.Column.words("Where", "C12, plus side", 22), new AnswerRows.Column("What", "", 9, Interview.quantities()),
                AnswerRows.Column.words("A sound unit has", "24 V +/- 5 %", 17), AnswerRows.Column.words("Never over", "28 V", 6), new AnswerRows.Column("The unit is", "", 8, STATES),
                AnswerRows.Column.words("Min", "2", 3)), () -> {
                    readings.filled().forEach(row -> LimitWords.fitting(row.cell(1), row.cell(2)).ifPresent(quantity -> row.choose(1, quantity)));
                    dialog.changed();
                }, dialog::grown);
        with = LabelledFields.hint(page, "");
        LabelledFields.push(page, "&Ranges of your meter from a table\u2026", () -> rangesFromTable(dialog, TableDialog.UNNAMED));
        tellMeter();
    }

    private void tellMeter() {
        with.setText("Read with: " + meter.title() + ", " + meter.ranges().size() + " ranges. The data sheet of yours comes first.");
    }

    void codesFromTable(QuestionDialog dialog, Path table) {
        TableDialog asked = new TableDialog(dialog.getShell(), TableKind.CODES, Tables::codes, table);
        asked.open();
        asked.<Code>taken().ifPresent(taken -> codes.append(taken.stream().map(code -> List.of(code.shown().replace("\"", ""), code.meaning())).toList()));
    }

    void rangesFromTable(QuestionDialog dialog, Path table) {
        TableDialog asked = new TableDialog(dialog.getShell(), TableKind.RANGES, Tables::ranges, table);
        asked.open();
        asked.<Range>taken().ifPresent(taken -> {
            meter = new Meter("The meter of \"" + asked.fileName() + "\"", taken.stream().map(Range::line).toList());
            tellMeter();
            dialog.changed();
        });
    }

    void stepsFromTable(QuestionDialog dialog, Path table) {
        TableDialog asked = new TableDialog(dialog.getShell(), TableKind.STEPS, this::signsOf, table);
        asked.open();
        asked.<StepLine>taken().ifPresent(taken -> {
            looks.append(taken.stream().filter(step -> step.kind() == StepKind.CHECK).map(step -> List.of(step.step(), "yes", "no", "on", step.minutes())).toList());
            readings.append(taken.stream().filter(step -> step.kind() == StepKind.MEASURE).map(step -> List.of(step.at().isEmpty() ? step.step() : step.at(),
                    step.quantity(), step.expects(), "", "off, open", step.minutes())).toList());
        });
    }

    /** The steps that tell something; what puts a fault right belongs to that fault. */
    private ImportedLines<StepLine> signsOf(HeadedTable table, Map<String, Integer> columns) throws UnusableTable {
        ImportedLines<StepLine> steps = Tables.steps(table, columns, meter);
        List<String> unread = new ArrayList<>(steps.unread());
        steps.read().stream().filter(step -> step.kind() == StepKind.DO).forEach(step -> unread.add("\"" + step.step()
                + "\" tells nothing; name it as what puts a fault right."));
        return new ImportedLines<>(steps.read().stream().filter(step -> step.kind() != StepKind.DO).toList(), unread);
    }

    /** The columns of a fault table, as looks. @return by heading the row of each */
    Map<String, AnswerRows.Row> append(List<FaultLine> lines) {
        Map<String, Set<String>> seen = new LinkedHashMap<>();
        lines.forEach(line -> line.shows().forEach((heading, cell) -> seen.computeIfAbsent(heading, none -> new LinkedHashSet<>())
                .addAll(List.of(cell.split("(?i)\\s+or\\s+")))));
        List<AnswerRows.Row> before = looks.filled();
        looks.append(seen.entrySet().stream().map(one -> List.of(one.getKey(), "as it should", String.join(", ", one.getValue()), "on", "")).toList());
        List<AnswerRows.Row> added = looks.filled().stream().filter(row -> !before.contains(row)).toList();
        Map<String, AnswerRows.Row> rows = new LinkedHashMap<>();
        List<String> headings = List.copyOf(seen.keySet());
        for (int i = 0; i < headings.size() && i < added.size(); i++) {
            rows.put(headings.get(i), added.get(i));
        }
        return rows;
    }

    /** What stands for a sign from one look at the answers to the next. */
    record SignRow(Object key, FaultSign sign) {
    }

    List<SignRow> signs() {
        List<SignRow> signs = new ArrayList<>();
        for (AnswerRows.Row row : looks.filled()) {
            List<String> answers = new ArrayList<>(List.of(row.cell(1).isEmpty() ? "as it should" : row.cell(1)));
            answers.addAll(AnswerRows.parted(row.cell(2)));
            signs.add(new SignRow(row, new FaultSign.Look(row.cell(0), answers, row.cell(3).equals("on"), false, row.cell(4))));
        }
        List<Code> table = codes();
        if (!table.isEmpty()) {
            signs.add(new SignRow(codes, new FaultSign.Codes(lamp.getText().isBlank() ? "Lamp or read-out" : lamp.getText().strip(), table, document.getText().strip(),
                    true, "1")));
        }
        for (AnswerRows.Row row : readings.filled()) {
            if (!row.cell(2).isEmpty()) {
                signs.add(new SignRow(row, new FaultSign.Reading(row.cell(0).isEmpty() ? row.cell(1) : row.cell(0), row.cell(1), row.cell(2), row.cell(3),
                        document.getText().strip(), row.cell(4).startsWith("on"), row.cell(4).endsWith("open"), row.cell(5))));
            }
        }
        return signs;
    }

    private List<Code> codes() {
        List<Code> table = new ArrayList<>();
        for (AnswerRows.Row row : codes.filled()) {
            Tables.code(row.cell(0)).filter(shown -> table.stream().noneMatch(other -> other.shown().equals(shown)))
                    .ifPresent(shown -> table.add(new Code(shown, row.cell(1).isEmpty() ? "Not known" : row.cell(1))));
        }
        return table;
    }

    Meter meter() {
        return meter;
    }

    @Override
    String problem() {
        Set<String> known = new HashSet<>();
        for (AnswerRows.Row row : codes.filled()) {
            Optional<String> shown = Tables.code(row.cell(0));
            if (shown.isPresent() && !known.add(shown.get())) {
                return "\"" + row.cell(0) + "\" stands in two rows; put what it means into one of them, and take the other out.";
            }
            if (shown.isEmpty()) {
                return row.cell(0).isEmpty() ? "Which code means \"" + row.cell(1) + "\"?" : "\"" + row.cell(0) + "\" is there anyway; take that row out.";
            }
        }
        return readings.filled().stream().filter(row -> row.cell(2).isEmpty()).findFirst().map(row -> "What does a sound unit have "
                + (row.cell(0).isEmpty() ? "in that reading" : "at \"" + row.cell(0) + "\"") + "? Write a limit, such as 24 V +/- 5 % or 12 ohm .. 15 ohm.")
                .or(() -> looks.notMinutes(4)).or(() -> readings.notMinutes(5)).orElse("");
    }

    @Override
    void setFocus() {
        looks.setFocus();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.faultwright.language.beginning.FaultSign;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.LabelledFields;

/** What each sign shows with each fault. */
final class SignsByFaultPage extends QuestionPage {
    private static final String AS_IT_SHOULD = "as it should be";
    private static final String NOT_KNOWN = "not known";

    /** A place in the table. @param cause the row of the fault @param sign what stands for the sign */
    private record Place(Object cause, Object sign) {
    }

    private final CausesPage causes;
    private final SignsPage signs;
    private final Map<Place, String> shown = new HashMap<>();
    private Composite grid;
    private QuestionDialog dialog;

    SignsByFaultPage(CausesPage causes, SignsPage signs) {
        super("What is seen", "What does each of them show?");
        this.causes = causes;
        this.signs = signs;
    }

    @Override
    void create(Composite page, QuestionDialog asking) {
        dialog = asking;
        LabelledFields.hint(page, "Leave what you do not know; a look or a reading is then as it should be.");
        grid = new Composite(page, SWT.NONE);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(grid);
        causes.whenImported(() -> {
            List<AnswerRows.Row> rows = causes.rows();
            Map<String, AnswerRows.Row> added = signs.append(causes.lines());
            int first = rows.size() - causes.lines().size();
            for (int i = 0; i < causes.lines().size(); i++) {
                AnswerRows.Row cause = rows.get(first + i);
                causes.lines().get(i).shows().forEach((heading, cell) -> shown.put(new Place(cause, added.get(heading)), cell));
            }
            dialog.changed();
        });
    }

    @Override
    void show() {
        for (Control old : grid.getChildren()) {
            old.dispose();
        }
        List<SignsPage.SignRow> told = signs.signs();
        if (told.isEmpty() || causes.rows().isEmpty()) {
            GridLayoutFactory.fillDefaults().applyTo(grid);
            new Label(grid, SWT.NONE).setText(causes.rows().isEmpty() ? "No fault is named yet." : "No sign is named yet: the faults are then tried one after the other.");
            return;
        }
        GridLayoutFactory.fillDefaults().numColumns(told.size() + 1).spacing(6, 4).applyTo(grid);
        new Label(grid, SWT.NONE).setText("Fault");
        for (SignsPage.SignRow one : told) {
            wrapped(one.sign().words(), 12);
        }
        for (AnswerRows.Row cause : causes.rows()) {
            wrapped(cause.cell(0), 16);
            told.forEach(one -> combo(cause, one));
        }
    }

    private void wrapped(String words, int letters) {
        Label label = new Label(grid, SWT.WRAP);
        label.setText(words.replace("&", "&&"));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).hint((int) (letters * CharacterWidth.width(label)), SWT.DEFAULT).applyTo(label);
    }

    private void combo(AnswerRows.Row cause, SignsPage.SignRow told) {
        Place place = new Place(cause, told.key());
        Map<String, String> choices = choices(told.sign());
        String before = shown.getOrDefault(place, "");
        Combo combo = new Combo(grid, SWT.READ_ONLY);
        if (!before.isEmpty() && !choices.containsValue(before)) {
            choices.put(before, before);
        }
        combo.setItems(choices.keySet().toArray(String[]::new));
        combo.select(Math.max(0, List.copyOf(choices.values()).indexOf(before)));
        combo.addListener(SWT.Selection, event -> {
            shown.put(place, choices.get(combo.getText()));
            dialog.changed();
        });
        AccessibleName.as(combo, cause.cell(0) + ": " + told.sign().words());
        combo.setToolTipText((cause.cell(0) + ": " + told.sign().words()).replace("&", "&&"));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(combo);
    }

    /** By its words, each result as the text has it. */
    private static Map<String, String> choices(FaultSign sign) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put(sign.isNormalUnlessSaid() ? AS_IT_SHOULD : NOT_KNOWN, "");
        if (sign instanceof FaultSign.Look look) {
            List<String> results = look.results();
            look.answers().stream().skip(1).forEach(answer -> results.stream().filter(result -> result.equals(FaultSign.result(answer))).findFirst()
                    .filter(result -> !result.equals(results.get(0))).ifPresent(result -> choices.putIfAbsent(answer, result)));
        } else {
            sign.results().stream().filter(result -> !result.equals("within")).forEach(result -> choices.put(result.replace("\"", ""), result));
        }
        return choices;
    }

    /** For each sign, in their order, what is seen with a fault; empty where nobody said. */
    List<String> of(AnswerRows.Row cause, List<SignsPage.SignRow> told) {
        return told.stream().map(one -> {
            String words = shown.getOrDefault(new Place(cause, one.key()), "");
            List<String> results = one.sign().results();
            return Stream.of(words.split("(?i)\\s+or\\s+")).map(word -> one.sign() instanceof FaultSign.Look ? FaultSign.result(word) : word).allMatch(results::contains)
                    ? FaultSign.possible(words, one.sign()) : "";
        }).toList();
    }

    @Override
    void setFocus() {
        for (Control control : grid.getChildren()) {
            if (control instanceof Combo) {
                control.setFocus();
                return;
            }
        }
    }
}

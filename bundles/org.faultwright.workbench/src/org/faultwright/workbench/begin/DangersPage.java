/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.Danger;
import org.faultwright.language.beginning.Interview.Caution;
import org.faultwright.language.beginning.Interview.Store;
import org.faultwright.workbench.look.LabelledFields;

/** What can hurt somebody or something. */
final class DangersPage extends QuestionPage {
    private final Map<Danger, Button> ticked = new EnumMap<>(Danger.class);
    private final Map<Danger, Text> what = new EnumMap<>(Danger.class);
    private final Map<Danger, Text> avoid = new EnumMap<>(Danger.class);
    private final boolean asksWhere;
    private Text where;
    private Text most;

    /** @param asksWhere whether to ask where charge stays, which only a procedure has */
    DangersPage(boolean asksWhere) {
        super("Dangers", "What can hurt?");
        this.asksWhere = asksWhere;
    }

    @Override
    void create(Composite page, QuestionDialog dialog) {
        LabelledFields.hint(page, "Tick what is met. The words remind; let somebody who is trained for it write them over. Local codes, the maker's instructions and "
                + "licensed practice come first.");
        for (Danger danger : Danger.values()) {
            Button tick = LabelledFields.check(page, danger.title(), () -> { });
            Composite more = new Composite(page, SWT.NONE);
            GridLayoutFactory.fillDefaults().numColumns(2).spacing(8, 4).applyTo(more);
            GridDataFactory.fillDefaults().span(2, 1).grab(true, false).indent(22, 0).exclude(true).applyTo(more);
            what.put(danger, LabelledFields.text(more, "What is dangerous", "", dialog::changed));
            avoid.put(danger, LabelledFields.text(more, "What to do", "", dialog::changed));
            what.get(danger).setText(danger.what());
            avoid.get(danger).setText(danger.avoid());
            if (danger == Danger.CHARGE && asksWhere) {
                where = LabelledFields.text(more, "Where it stays", "Across C1, the large capacitor", dialog::changed);
                most = LabelledFields.text(more, "Highest voltage there", "400 V", dialog::changed);
            }
            more.setVisible(false);
            tick.addListener(SWT.Selection, event -> {
                ((GridData) more.getLayoutData()).exclude = !tick.getSelection();
                more.setVisible(tick.getSelection());
                dialog.grown();
                dialog.changed();
            });
            ticked.put(danger, tick);
        }
    }

    Map<Danger, Caution> dangers() {
        Map<Danger, Caution> dangers = new EnumMap<>(Danger.class);
        ticked.forEach((danger, tick) -> {
            if (tick.getSelection()) {
                dangers.put(danger, new Caution(words(what.get(danger), danger.what()), words(avoid.get(danger), danger.avoid())));
            }
        });
        return dangers;
    }

    private static String words(Text typed, String otherwise) {
        return typed.getText().isBlank() ? otherwise : typed.getText().strip();
    }

    Optional<Store> store() {
        return asksWhere && ticked.get(Danger.CHARGE).getSelection() ? Optional.of(new Store(where.getText(), most.getText())) : Optional.empty();
    }

    @Override
    void setFocus() {
        ticked.get(Danger.SHOCK).setFocus();
    }
}

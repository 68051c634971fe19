/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.Arrays;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.Interview.Supply;
import org.faultwright.workbench.look.LabelledFields;

/** Which unit. */
final class UnitPage extends QuestionPage {
    private Text unit;
    private Text boards;
    private Combo supply;
    private Button cover;

    UnitPage() {
        super("The unit", "Which unit is it for?");
    }

    @Override
    void create(Composite page, QuestionDialog dialog) {
        unit = LabelledFields.text(page, "Maker and model", "as on the rating plate", dialog::changed);
        boards = LabelledFields.text(page, "Revisions of its boards", "A", dialog::changed);
        supply = LabelledFields.choice(page, "It is fed by", Arrays.stream(Supply.values()).map(Supply::title).toList(), dialog::changed);
        cover = LabelledFields.check(page, "A cover comes off for repairs", dialog::changed);
        cover.setSelection(true);
        LabelledFields.hint(page, "Answer what you know and go on; everything can be changed later, here or in the text. The text grows on the right.");
    }

    @Override
    void setFocus() {
        unit.setFocus();
    }

    String unit() {
        return unit.getText().strip();
    }

    String boards() {
        return boards.getText().strip();
    }

    Supply supply() {
        return Supply.values()[supply.getSelectionIndex()];
    }

    boolean hasCover() {
        return cover.getSelection();
    }
}

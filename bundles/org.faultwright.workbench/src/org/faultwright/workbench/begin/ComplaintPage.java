/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.faultwright.workbench.look.LabelledFields;

/** What is reported. */
final class ComplaintPage extends QuestionPage {
    private Text seen;
    private AnswerRows complaints;

    ComplaintPage() {
        super("The complaint", "What is reported?");
    }

    @Override
    void create(Composite page, QuestionDialog dialog) {
        seen = LabelledFields.text(page, "What is seen", "in a few words: prints faint labels", dialog::changed);
        LabelledFields.words(page, "What do customers say, in their own words, also where they are wrong?");
        complaints = new AnswerRows(page, "Complaint", List.of(AnswerRows.Column.words("In the customer's words", "as on the job slip", 40)), dialog::changed, dialog::grown);
    }

    @Override
    void setFocus() {
        seen.setFocus();
    }

    String seen() {
        return seen.getText().strip();
    }

    List<String> complaints() {
        return complaints.filled().stream().map(row -> row.cell(0)).toList();
    }
}

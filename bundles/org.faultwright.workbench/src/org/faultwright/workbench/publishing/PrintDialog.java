/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.util.List;
import javax.print.PrintService;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.publish.card.CardPrinting;
import org.faultwright.publish.exports.Exports;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.LabelledFields;
import org.faultwright.workbench.look.TitledDialog;

/** Asks which printer, which paper, and how often. */
final class PrintDialog extends TitledDialog {
    /** @param bothSides whether it turns the paper over */
    record Printer(PrintService service, boolean bothSides) {
        /** Asks the printer: never in the window's thread. */
        static Printer of(PrintService service) {
            return new Printer(service, CardPrinting.printsBothSides(service));
        }
    }

    private final List<Printer> printers;
    private final List<CardPdf> cards = Exports.all().stream().filter(CardPdf.class::isInstance).map(CardPdf.class::cast).toList();
    private final int errors;
    private Combo printerChoice;
    private Combo cardChoice;
    private Spinner copiesField;
    private Button bothSidesBox;
    private PrintService printer;
    private CardPdf card;
    private int copies;
    private boolean bothSides;

    /** @param printers one at least, the usual one first @param errors that are open in the procedure */
    PrintDialog(Shell shell, List<Printer> printers, int errors) {
        super(shell, PrintHandler.TITLE);
        this.printers = List.copyOf(printers);
        this.errors = errors;
    }

    PrintService printer() {
        return printer;
    }

    CardPdf card() {
        return card;
    }

    int copies() {
        return copies;
    }

    boolean bothSides() {
        return bothSides;
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = area(parent);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(12, 12).spacing(10, 8).applyTo(area);
        printerChoice = LabelledFields.choice(area, "Printer", printers.stream().map(one -> one.service().getName()).toList(), this::sides);
        cardChoice = LabelledFields.choice(area, "Form", cards.stream().map(CardPdf::title).toList(), () -> { });
        new Label(area, SWT.NONE).setText("Copies");
        copiesField = new Spinner(area, SWT.BORDER);
        copiesField.setValues(1, 1, CardPrinting.MOST_COPIES, 0, 1, 10);
        AccessibleName.as(copiesField, "Copies");
        bothSidesBox = LabelledFields.check(area, "On both sides of the paper", () -> { });
        if (errors > 0) {
            Label draft = new Label(area, SWT.WRAP);
            draft.setText("This procedure has " + errors + (errors == 1 ? " error" : " errors") + ". Every page says DRAFT, and the errors are listed.");
            GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(300, SWT.DEFAULT).applyTo(draft);
        }
        sides();
        return area;
    }

    private void sides() {
        boolean can = printers.get(printerChoice.getSelectionIndex()).bothSides();
        bothSidesBox.setEnabled(can);
        bothSidesBox.setSelection(can && bothSidesBox.getSelection());
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, errors > 0 ? "Print as a draft" : "Print", true);
        createButton(parent, IDialogConstants.CANCEL_ID, "Cancel", false);
    }

    @Override
    protected void okPressed() {
        printer = printers.get(printerChoice.getSelectionIndex()).service();
        card = cards.get(cardChoice.getSelectionIndex());
        copies = copiesField.getSelection();
        bothSides = bothSidesBox.getSelection();
        super.okPressed();
    }
}

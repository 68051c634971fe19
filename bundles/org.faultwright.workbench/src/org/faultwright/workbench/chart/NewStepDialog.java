/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.faultwright.analysis.steps.NewStep;
import org.faultwright.language.beginning.Interview;
import org.faultwright.language.beginning.LimitWords;
import org.faultwright.language.server.Renaming;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Scope;
import org.faultwright.workbench.look.LabelledFields;
import org.faultwright.workbench.look.TitledDialog;

/** Asks what a new step is: its kind, its name and its words. */
final class NewStepDialog extends TitledDialog {
    private static final String NOTHING = "\u2013";

    private final Set<String> taken;
    private final Scope scope;
    private final List<Control> ofReadings = new ArrayList<>();
    private Combo quantity;
    private Combo point;
    private Combo against;
    private Combo instrument;
    private Text limit;
    private Combo kind;
    private Text name;
    private Text words;
    private Label problem;
    private Optional<NewStep> answer = Optional.empty();

    /** @param taken names that are given already @param scope where points and instruments come from */
    NewStepDialog(Shell shell, String title, Set<String> taken, Scope scope) {
        super(shell, title);
        this.taken = taken;
        this.scope = scope;
    }

    Optional<NewStep> ask() {
        return open() == OK ? answer : Optional.empty();
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = area(parent);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(8, 8).spacing(10, 8).applyTo(area);
        kind = LabelledFields.choice(area, "Kind", Stream.of(NewStep.Kind.values()).map(NewStep.Kind::words).toList(), this::check);
        name = LabelledFields.text(area, "Name", "", this::check);
        words = LabelledFields.text(area, "Words", "The question, what is read or done, or the conclusion", this::check);
        int before = area.getChildren().length;
        quantity = LabelledFields.choice(area, "What is read", Interview.quantities(), this::check);
        point = LabelledFields.choice(area, "Where", names(scope.points()), this::check);
        against = LabelledFields.choice(area, "Against", Stream.concat(Stream.of(NOTHING), names(scope.points()).stream()).toList(), this::check);
        instrument = LabelledFields.choice(area, "With", names(scope.instruments()), this::check);
        limit = LabelledFields.text(area, "A sound unit has", "24 V +/- 5 %", () -> {
            LimitWords.fitting(quantity.getText(), limit.getText()).ifPresent(fits -> quantity.select(quantity.indexOf(fits)));
            check();
        });
        ofReadings.addAll(Arrays.asList(area.getChildren()).subList(before, area.getChildren().length));
        problem = new Label(area, SWT.WRAP);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(convertWidthInCharsToPixels(64), 2 * convertHeightInCharsToPixels(1)).applyTo(problem);
        return area;
    }

    private static List<String> names(List<? extends Declaration> declared) {
        return declared.stream().map(one -> one.name().text()).toList();
    }

    /** What a reading is asked for beside; of the others nothing is. */
    private void showWhatIsAsked() {
        boolean shown = kind() == NewStep.Kind.MEASURE;
        if (ofReadings.get(0).getVisible() != shown) {
            ofReadings.forEach(one -> {
                one.setVisible(shown);
                ((GridData) one.getLayoutData()).exclude = !shown;
            });
            ofReadings.get(0).getParent().layout();
            Point needed = getShell().computeSize(getShell().getSize().x, SWT.DEFAULT);
            Point corner = getShell().getLocation();
            getShell().setBounds(getConstrainedShellBounds(new Rectangle(corner.x, corner.y, getShell().getSize().x, needed.y)));
        }
    }

    private NewStep.Kind kind() {
        return NewStep.Kind.values()[kind.getSelectionIndex()];
    }

    private String free() {
        String wanted = "NewStep";
        String one = wanted;
        for (int number = 2; taken.contains(one); number++) {
            one = wanted + number;
        }
        return one;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Write it", true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        for (Control one : ofReadings) {
            if (one.getLayoutData() == null) {
                one.setLayoutData(new GridData());
            }
        }
        name.setText(free());
        name.selectAll();
        name.setFocus();
    }

    private void check() {
        if (getButton(IDialogConstants.OK_ID) == null) {
            return;
        }
        showWhatIsAsked();
        String typed = name.getText().strip();
        Optional<String> wrong = Renaming.unfit(typed)
                .or(() -> taken.contains(typed) ? Optional.of("There is a step \"" + typed + "\" already.") : Optional.empty())
                .or(() -> words.getText().isBlank() ? Optional.of("Write what the technician reads.") : Optional.empty())
                .or(this::wrongReading);
        problem.setText(wrong.map(sentence -> sentence.replace("&", "&&")).orElse(""));
        getButton(IDialogConstants.OK_ID).setEnabled(wrong.isEmpty());
    }

    private Optional<String> wrongReading() {
        if (kind() != NewStep.Kind.MEASURE) {
            return Optional.empty();
        }
        if (scope.points().isEmpty() || scope.instruments().isEmpty()) {
            return Optional.of("The text names no " + (scope.points().isEmpty() ? "point" : "instrument") + " yet; write one there first.");
        }
        return limit.getText().isBlank() ? Optional.of("Write what a sound unit has, such as 24 V +/- 5 % or at most 2 ohm.") : Optional.empty();
    }

    /** Asked of the language once, when all is typed. */
    private Optional<String> unreadLimit() {
        return kind() != NewStep.Kind.MEASURE ? Optional.empty()
                : LimitWords.problem(quantity.getText(), limit.getText(), scope.instruments().get(instrument.getSelectionIndex()).ranges().stream()
                        .map(range -> range.at().text()).toList());
    }

    @Override
    protected void okPressed() {
        Optional<String> wrong = unreadLimit();
        if (wrong.isPresent()) {
            problem.setText(wrong.get().replace("&", "&&"));
            limit.setFocus();
            return;
        }
        Optional<NewStep.Reading> reading = kind() == NewStep.Kind.MEASURE ? Optional.of(new NewStep.Reading(quantity.getText(), point.getText(),
                against.getSelectionIndex() == 0 ? "" : against.getText(), instrument.getText(), Interview.limit(limit.getText()))) : Optional.empty();
        answer = Optional.of(new NewStep(kind(), name.getText().strip(), words.getText().strip(), reading));
        super.okPressed();
    }
}

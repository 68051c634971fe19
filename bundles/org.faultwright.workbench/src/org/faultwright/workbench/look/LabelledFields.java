/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** The few kinds of controls that questions are made of, each told to who cannot see what stands before it. */
public final class LabelledFields {
    private static final int SOME_WIDTH = 120;

    private LabelledFields() {
    }

    public static Composite page(Composite parent) {
        Composite page = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).margins(12, 10).spacing(10, 8).applyTo(page);
        return page;
    }

    public static Label heading(Composite in, String words) {
        Label label = words(in, words);
        label.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        return label;
    }

    /** Words over the whole width. */
    public static Label words(Composite in, String words) {
        Label label = new Label(in, SWT.WRAP);
        label.setText(words.replace("&", "&&"));
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(SOME_WIDTH, SWT.DEFAULT).applyTo(label);
        return label;
    }

    public static Label hint(Composite in, String words) {
        Label label = words(in, words);
        label.setForeground(Palette.now().of(Palette.Use.BESIDE));
        return label;
    }

    public static Text text(Composite in, String label, String hint, Runnable changed) {
        label(in, label);
        Text text = new Text(in, SWT.BORDER);
        text.setMessage(hint);
        text.addListener(SWT.Modify, event -> changed.run());
        AccessibleName.as(text, label);
        GridDataFactory.fillDefaults().grab(true, false).hint(SOME_WIDTH, SWT.DEFAULT).applyTo(text);
        return text;
    }

    public static Combo choice(Composite in, String label, List<String> choices, Runnable changed) {
        label(in, label);
        Combo combo = new Combo(in, SWT.READ_ONLY);
        combo.setItems(choices.toArray(String[]::new));
        combo.select(0);
        combo.addListener(SWT.Selection, event -> changed.run());
        AccessibleName.as(combo, label);
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(combo);
        return combo;
    }

    public static Button check(Composite in, String words, Runnable changed) {
        Button button = new Button(in, SWT.CHECK);
        button.setText(words.replace("&", "&&"));
        button.addListener(SWT.Selection, event -> changed.run());
        GridDataFactory.fillDefaults().span(2, 1).applyTo(button);
        return button;
    }

    public static Button push(Composite in, String words, Runnable act) {
        Button button = new Button(in, SWT.PUSH);
        button.setText(words);
        button.addListener(SWT.Selection, event -> act.run());
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).span(2, 1).applyTo(button);
        return button;
    }

    private static void label(Composite in, String words) {
        new Label(in, SWT.NONE).setText(words.replace("&", "&&"));
    }
}

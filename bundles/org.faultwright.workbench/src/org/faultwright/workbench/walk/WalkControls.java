/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Text;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.ScrolledPage;

/** The few kinds of things that the page of a walk is made of. */
final class WalkControls {
    private static final int STRIPE = 5;
    private static final int GAUGE_WIDTH = 60;
    private static final int GAUGE_HEIGHT = 8;
    /** A hint alone: what is wide grows to the room that there is. */
    private static final int SOME_WIDTH = 120;

    private WalkControls() {
    }

    static Font bold() {
        return JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT);
    }

    static Label words(Composite in, String words) {
        Label label = new Label(in, SWT.WRAP);
        label.setText(escaped(words));
        wide(label);
        return label;
    }

    static Label strong(Composite in, String words) {
        Label label = words(in, words);
        label.setFont(bold());
        return label;
    }

    static Label beside(Composite in, String words) {
        Label label = words(in, words);
        label.setForeground(Palette.now().of(Palette.Use.BESIDE));
        return label;
    }

    static Label heading(Composite in, String words) {
        Label label = words(in, words);
        label.setFont(JFaceResources.getHeaderFont());
        return label;
    }

    /** A label that is as wide as its words. */
    static Label narrow(Composite in, String words) {
        Label label = new Label(in, SWT.NONE);
        label.setText(escaped(words));
        GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(label);
        return label;
    }

    static Button button(Composite in, String words, Runnable act) {
        Button button = new Button(in, SWT.PUSH | SWT.WRAP);
        button.setText(escaped(words));
        button.addListener(SWT.Selection, event -> act.run());
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(button);
        return button;
    }

    static Link link(Composite in, String words, Consumer<String> act) {
        Link link = ScrolledPage.link(in);
        link.setText(words);
        link.addListener(SWT.Selection, event -> act.accept(event.text));
        wide(link);
        return link;
    }

    static Text text(Composite in, String name, int characters) {
        Text text = new Text(in, SWT.BORDER | SWT.SINGLE);
        text.setTextLimit(characters);
        AccessibleName.as(text, name);
        return text;
    }

    static Composite rows(Composite in, int columns) {
        Composite rows = new Composite(in, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(columns).spacing(8, 4).applyTo(rows);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(rows);
        return rows;
    }

    /** Words beside a stripe. */
    static Composite marked(Composite in, Palette.Use colour) {
        Composite box = rows(in, 2);
        Canvas stripe = new Canvas(box, SWT.NO_FOCUS);
        stripe.setBackground(Palette.now().of(colour));
        GridDataFactory.fillDefaults().hint(STRIPE, 10).grab(false, true).applyTo(stripe);
        Composite inner = rows(box, 1);
        return inner;
    }

    /** @param share of 1 */
    static void gauge(Composite in, double share) {
        Canvas gauge = new Canvas(in, SWT.NO_FOCUS);
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).hint(GAUGE_WIDTH, GAUGE_HEIGHT).applyTo(gauge);
        gauge.addListener(SWT.Paint, event -> {
            event.gc.setForeground(Palette.now().of(Palette.Use.BRACKET));
            event.gc.drawRectangle(0, 0, GAUGE_WIDTH - 1, GAUGE_HEIGHT - 1);
            event.gc.setBackground(Palette.now().of(Palette.Use.BRACKET));
            event.gc.fillRectangle(0, 0, (int) Math.max(1, Math.round(share * GAUGE_WIDTH)), GAUGE_HEIGHT);
        });
    }

    static void wide(Control control) {
        GridDataFactory.fillDefaults().grab(true, false).hint(SOME_WIDTH, SWT.DEFAULT).applyTo(control);
    }

    static String escaped(String words) {
        return words.replace("&", "&&");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.jface.text.DefaultInformationControl;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.graphics.Drawable;

/** Shows the few kinds of Markdown that explanations are written in: bold, lists and tables. */
final class MarkdownPresenter
        implements DefaultInformationControl.IInformationPresenter,
        DefaultInformationControl.IInformationPresenterExtension {
    private static final Pattern BOLD = Pattern.compile("\\*\\*(.+?)\\*\\*");

    @Override
    public String updatePresentation(Drawable drawable, String markdown, TextPresentation presentation, int width,
            int height) {
        StringBuilder shown = new StringBuilder();
        for (String line : markdown.split("\n")) {
            if (line.matches("\\|(---\\|)+")) {
                continue;
            }
            append(line.startsWith("|") ? row(line) : line, shown, presentation);
        }
        return shown.toString().stripTrailing();
    }

    @Override
    public String updatePresentation(org.eclipse.swt.widgets.Display display, String markdown,
            TextPresentation presentation, int width, int height) {
        return updatePresentation((Drawable) display, markdown, presentation, width, height);
    }

    private static String row(String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.substring(1).split("(?<!\\\\)\\|")) {
            if (!cell.isBlank()) {
                cells.add(cell.strip());
            }
        }
        return String.join("   ", cells);
    }

    private static void append(String line, StringBuilder shown, TextPresentation presentation) {
        Matcher bold = BOLD.matcher(line);
        int from = 0;
        while (bold.find()) {
            shown.append(plain(line.substring(from, bold.start())));
            int start = shown.length();
            shown.append(plain(bold.group(1)));
            StyleRange range = new StyleRange(start, shown.length() - start, null, null, SWT.BOLD);
            presentation.addStyleRange(range);
            from = bold.end();
        }
        shown.append(plain(line.substring(from).replaceFirst("^- ", "\u2022 "))).append('\n');
    }

    private static String plain(String words) {
        return words.replaceAll("\\\\([^\\p{L}\\d\\s])", "$1").replace("*", "");
    }
}

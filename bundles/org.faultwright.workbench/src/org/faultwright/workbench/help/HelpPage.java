/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.faultwright.language.server.Colouring;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** Shows the Markdown that help pages are written in: headings, bold, code, lists, tables and procedure texts. */
final class HelpPage {
    private final Color heading = Palette.now().of(Use.HEADING);
    private final Color codeGround = Palette.now().of(Use.CODE_GROUND);
    private static final Pattern INLINE = Pattern.compile("\\*\\*(.+?)\\*\\*|`([^`]+)`|\\*([^*]+)\\*");

    private static final Pattern PICTURE = Pattern.compile("!\\[([^\\]]*)\\]\\(([\\w/-]+)\\.png\\)");

    private final List<HelpPicture> pictures = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();
    private final List<StyleRange> styles = new ArrayList<>();

    private HelpPage() {
    }

    static void show(String markdown, StyledText into) {
        HelpPage page = new HelpPage();
        page.write(markdown);
        into.setText(page.text.toString());
        into.setStyleRanges(page.styles.toArray(StyleRange[]::new));
        HelpPicture.put(page.pictures, into);
        into.setTopIndex(0);
    }

    private void write(String markdown) {
        StringBuilder code = null;
        for (String line : markdown.split("\n")) {
            if (line.startsWith("```")) {
                if (code != null) {
                    code(code.toString());
                }
                code = code == null ? new StringBuilder() : null;
            } else if (code != null) {
                code.append(line).append('\n');
            } else {
                line(line);
            }
        }
    }

    private void line(String line) {
        Matcher picture = PICTURE.matcher(line);
        if (picture.matches()) {
            pictures.add(new HelpPicture(text.length(), picture.group(2)));
            text.append("\ufffc\n");
            styled(picture.group(1), text.length(), SWT.ITALIC);
            text.append('\n');
        } else if (line.startsWith("#")) {
            int start = text.length();
            String words = line.replaceFirst("^#+\\s*", "");
            text.append(words).append('\n');
            StyleRange style = new StyleRange(start, words.length(), heading, null, SWT.BOLD);
            style.font = line.startsWith("##") ? JFaceResources.getBannerFont() : JFaceResources.getHeaderFont();
            styles.add(style);
        } else if (!line.matches("\\|[-| ]+\\|?")) {
            inline(line.startsWith("|") ? line.replaceAll("^\\|\\s*|\\s*\\|$", "").replaceAll("\\s*\\|\\s*", "    ")
                    : line.replaceFirst("^(\\s*)- ", "$1\u2022 "));
            text.append('\n');
        }
    }

    private void inline(String line) {
        Matcher part = INLINE.matcher(line);
        int from = 0;
        while (part.find()) {
            text.append(line, from, part.start());
            int start = text.length();
            if (part.group(1) != null) {
                styled(part.group(1), start, SWT.BOLD);
            } else if (part.group(2) != null) {
                text.append(part.group(2));
                StyleRange style = new StyleRange(start, part.group(2).length(), heading, codeGround);
                style.font = JFaceResources.getTextFont();
                styles.add(style);
            } else {
                styled(part.group(3), start, SWT.ITALIC);
            }
            from = part.end();
        }
        text.append(line.substring(from));
    }

    private void styled(String words, int start, int style) {
        text.append(words);
        styles.add(new StyleRange(start, words.length(), null, null, style));
    }

    private void code(String code) {
        int base = text.length();
        text.append(code);
        int at = 0;
        for (Colouring.Stretch stretch : Colouring.of(code)) {
            plain(base + at, stretch.offset() - at);
            StyleRange style = new StyleRange(base + stretch.offset(), stretch.length(), colour(stretch.kind()), codeGround,
                    stretch.kind() == Colouring.Kind.BEGINNING ? SWT.BOLD : SWT.NORMAL);
            style.font = JFaceResources.getTextFont();
            styles.add(style);
            at = stretch.offset() + stretch.length();
        }
        plain(base + at, code.length() - at);
    }

    private void plain(int start, int length) {
        if (length > 0) {
            StyleRange style = new StyleRange(start, length, null, codeGround);
            style.font = JFaceResources.getTextFont();
            styles.add(style);
        }
    }

    private Color colour(Colouring.Kind kind) {
        return switch (kind) {
            case BEGINNING, KEYWORD -> heading;
            case QUANTITY, ARROW -> Palette.now().of(Use.QUANTITY);
            case NAME, TEXT, COMMENT -> null;
        };
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.EnumMap;
import java.util.Map;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.faultwright.language.server.Colouring;

/** One look for each kind of stretch; every colour has a contrast of at least 4.5 to 1 on white (WCAG 2.1, 1.4.3). */
final class Colours {
    private static final Map<Colouring.Kind, TextAttribute> LOOKS = new EnumMap<>(Colouring.Kind.class);

    static {
        look(Colouring.Kind.BEGINNING, new RGB(20, 84, 100), SWT.BOLD);
        look(Colouring.Kind.KEYWORD, new RGB(20, 84, 100), SWT.NORMAL);
        look(Colouring.Kind.NAME, new RGB(28, 28, 28), SWT.NORMAL);
        look(Colouring.Kind.QUANTITY, new RGB(156, 66, 14), SWT.NORMAL);
        look(Colouring.Kind.TEXT, new RGB(74, 74, 74), SWT.ITALIC);
        look(Colouring.Kind.COMMENT, new RGB(106, 112, 116), SWT.NORMAL);
        look(Colouring.Kind.ARROW, new RGB(156, 66, 14), SWT.BOLD);
    }

    private Colours() {
    }

    static TextAttribute of(Colouring.Kind kind) {
        return LOOKS.get(kind);
    }

    private static void look(Colouring.Kind kind, RGB rgb, int style) {
        LOOKS.put(kind, new TextAttribute(new Color(rgb), null, style));
    }
}

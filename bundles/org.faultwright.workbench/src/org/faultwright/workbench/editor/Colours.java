/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.EnumMap;
import java.util.Map;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.swt.SWT;
import org.faultwright.language.server.Colouring;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** One look for each kind of stretch. Only for the window's thread. */
final class Colours {
    private static final Map<Colouring.Kind, TextAttribute> LOOKS = new EnumMap<>(Colouring.Kind.class);

    static {
        look(Colouring.Kind.BEGINNING, Use.KEYWORD, SWT.BOLD);
        look(Colouring.Kind.KEYWORD, Use.KEYWORD, SWT.NORMAL);
        look(Colouring.Kind.NAME, Use.NAME, SWT.NORMAL);
        look(Colouring.Kind.QUANTITY, Use.QUANTITY, SWT.NORMAL);
        look(Colouring.Kind.TEXT, Use.TEXT, SWT.ITALIC);
        look(Colouring.Kind.COMMENT, Use.COMMENT, SWT.NORMAL);
        look(Colouring.Kind.ARROW, Use.QUANTITY, SWT.BOLD);
    }

    private Colours() {
    }

    static TextAttribute of(Colouring.Kind kind) {
        return LOOKS.get(kind);
    }

    private static void look(Colouring.Kind kind, Use use, int style) {
        LOOKS.put(kind, new TextAttribute(Palette.now().of(use), null, style));
    }
}

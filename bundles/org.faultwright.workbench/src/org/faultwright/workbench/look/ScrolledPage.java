/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.function.Consumer;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Link;

/** A page of lines that is written anew whenever what it speaks of changes, and scrolls where it is longer than its place. */
public final class ScrolledPage {
    private final ScrolledComposite scroll;
    private Composite body;

    public ScrolledPage(Composite parent) {
        scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        scroll.setShowFocusedControl(true);
        scroll.addListener(SWT.Resize, event -> fit());
    }

    /** Puts new content in the place of the old; does nothing once the page is closed. */
    public void write(Consumer<Composite> content) {
        if (scroll.isDisposed()) {
            return;
        }
        if (body != null) {
            body.dispose();
        }
        body = new Composite(scroll, SWT.NONE);
        GridLayoutFactory.swtDefaults().margins(12, 8).spacing(4, 6).applyTo(body);
        content.accept(body);
        scroll.setContent(body);
        fit();
    }

    /** Runs something in the thread of the window, unless the page is closed by then. From any thread. */
    public void later(Runnable what) {
        later(scroll, what);
    }

    /** The same for a control that is no such page. */
    public static void later(Control shown, Runnable what) {
        if (!shown.isDisposed()) {
            shown.getDisplay().asyncExec(() -> {
                if (!shown.isDisposed()) {
                    what.run();
                }
            });
        }
    }

    /** Scrolls as far as is needed to have it in sight. */
    public void reveal(Control part) {
        scroll.showControl(part);
    }

    /** After a part of the content has grown. */
    public void grown() {
        body.layout(true, true);
        fit();
    }

    private void fit() {
        if (body != null) {
            scroll.setMinHeight(body.computeSize(scroll.getClientArea().width, SWT.DEFAULT).y);
        }
    }

    public void setFocus() {
        scroll.setFocus();
    }

    /** A line of words with links in it. */
    public static Link link(Composite parent) {
        Link link = new Link(parent, SWT.WRAP);
        link.setLinkForeground(Palette.now().of(Palette.Use.LINK));
        return link;
    }

    /** Words as they stand, in a control that takes {@code &} and {@code <} for marks of its own. */
    public static String plain(String words) {
        return words.replace("&", "&&").replace("<", "\u2039");
    }
}

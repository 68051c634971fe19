/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import org.eclipse.swt.widgets.Composite;

/** Some questions that belong together. */
abstract class QuestionPage {
    private final String title;
    private final String name;

    /** @param name in one or two words, for the list of pages @param title as a question */
    QuestionPage(String name, String title) {
        this.name = name;
        this.title = title;
    }

    final String name() {
        return name;
    }

    final String title() {
        return title;
    }

    /** @param page laid out in two columns */
    abstract void create(Composite page, QuestionDialog dialog);

    /** Before it is seen. */
    void show() {
    }

    abstract void setFocus();

    /** Why the answers cannot be gone on with; empty where they can. */
    String problem() {
        return "";
    }
}

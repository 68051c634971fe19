/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.jface.text.source.DefaultCharacterPairMatcher;

/** Shows the brace or parenthesis that belongs to the one at the cursor. */
public final class BraceMatcher extends DefaultCharacterPairMatcher {
    public BraceMatcher() {
        super(new char[] {'{', '}', '(', ')'});
    }
}

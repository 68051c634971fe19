/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

/** A table that no text can be written from; the message is one sentence for its author. */
public final class UnusableTable extends Exception {
    private static final long serialVersionUID = 1L;

    UnusableTable(String message) {
        super(message);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

/** A file that is no record of a walk by the procedure in question. Its message is one sentence to be shown. */
public final class RecordRefused extends Exception {
    private static final long serialVersionUID = 1L;

    public RecordRefused(String message) {
        super(message);
    }
}

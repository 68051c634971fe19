/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** Nothing was published. The message is one sentence for the user: what, where, what to do. */
public final class PublishingRefused extends Exception {
    private static final long serialVersionUID = 1L;

    public PublishingRefused(String message) {
        super(message);
    }

    public PublishingRefused(String message, Throwable cause) {
        super(message, cause);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.Optional;

/** Nothing was published. The message is one sentence for the user: what, where, what to do. */
public final class PublishingRefused extends Exception {
    private static final long serialVersionUID = 1L;

    private transient ProcedureFolder.LeftOut leftOut;

    public PublishingRefused(String message) {
        super(message);
    }

    public PublishingRefused(String message, Throwable cause) {
        super(message, cause);
    }

    /** Of a procedure with open errors. */
    PublishingRefused(String message, ProcedureFolder.LeftOut leftOut) {
        super(message);
        this.leftOut = leftOut;
    }

    /** The procedure that was refused for its errors; absent where something else was in the way. */
    public Optional<ProcedureFolder.LeftOut> leftOut() {
        return Optional.ofNullable(leftOut);
    }
}

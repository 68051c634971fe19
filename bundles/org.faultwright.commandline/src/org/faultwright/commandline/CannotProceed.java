/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

/** Why a call could not be carried out, in one sentence for the user. */
final class CannotProceed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CannotProceed(String message) {
        super(message);
    }
}

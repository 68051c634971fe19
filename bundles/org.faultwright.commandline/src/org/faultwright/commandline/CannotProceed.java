/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Why a call could not be carried out, in one sentence for the user. */
final class CannotProceed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CannotProceed(String message) {
        super(message);
    }

    static CannotProceed missing(Path file) {
        return new CannotProceed("There is no readable file " + file + "; check the spelling and where you are.");
    }

    /** A file that is there and yet cannot be read says why; of one that is not there, the system says its name alone. */
    static CannotProceed unreadable(Path file, IOException why) {
        return why instanceof NoSuchFileException || why instanceof AccessDeniedException ? missing(file)
                : new CannotProceed("The file " + file + " cannot be read (" + why.getMessage() + ").");
    }
}

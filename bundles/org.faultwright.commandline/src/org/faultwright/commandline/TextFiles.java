/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.faultwright.publish.WholeFile;

/** Writes procedure texts whole or not at all. */
final class TextFiles {
    private TextFiles() {
    }

    /** @throws CannotProceed if the file cannot be written, or holds letters that could not be read; it is then as it was */
    static void replace(Path file, String content) {
        if (content.indexOf('\uFFFD') >= 0) {
            throw new CannotProceed(file + " is not in UTF-8 and is left as it is; save it as UTF-8 first, or its letters would be lost.");
        }
        try {
            WholeFile.replace(file, content.getBytes(StandardCharsets.UTF_8));
        } catch (IOException refused) {
            throw new CannotProceed("The file " + file + " cannot be written (" + refused.getMessage()
                    + "); it is as it was.");
        }
    }

    /** @throws CannotProceed if there is a file of that name, or if it cannot be written; a file that was there is as it was */
    static void create(Path file, String content) {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new CannotProceed(file + " is there already, and is left as it is; choose another name.");
        }
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new CannotProceed("There is no folder " + folder + "; make it first, or check the spelling.");
        }
        replace(file, content);
    }
}

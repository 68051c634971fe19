/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/** A folder that its owner alone may look into. */
final class OwnFolder {
    private OwnFolder() {
    }

    /** Makes it where it is missing; one that is there stays as it is. */
    static void make(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        } else {
            Files.createDirectories(folder);
        }
    }
}

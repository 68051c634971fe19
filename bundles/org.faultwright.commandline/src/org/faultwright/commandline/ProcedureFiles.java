/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/** The procedure files that a call names, itself or by their folders. */
final class ProcedureFiles {
    static final String EXTENSION = ".procedure";

    private ProcedureFiles() {
    }

    /**
     * Every file named and every procedure file below a folder named, each once, in the order of their paths.
     *
     * @throws CannotProceed if one does not exist or cannot be read, or if there is none at all
     */
    static List<Path> below(Collection<Path> named) {
        TreeSet<Path> found = new TreeSet<>();
        for (Path path : named) {
            if (Files.isDirectory(path)) {
                found.addAll(inFolder(path));
            } else if (Files.isReadable(path)) {
                found.add(path);
            } else {
                throw new CannotProceed("There is no readable file or folder " + path
                        + "; check the spelling and where you are.");
            }
        }
        if (found.isEmpty()) {
            throw new CannotProceed("No file ending in " + EXTENSION + " lies in "
                    + String.join(", ", named.stream().map(Path::toString).toList())
                    + "; name a procedure, a library or a folder of them.");
        }
        return List.copyOf(found);
    }

    private static List<Path> inFolder(Path folder) {
        TreeSet<Path> found = new TreeSet<>();
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path entered, BasicFileAttributes attributes) {
                    boolean hidden = !entered.equals(folder) && entered.getFileName().toString().startsWith(".");
                    return hidden ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    if (file.toString().endsWith(EXTENSION)) {
                        found.add(file);
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException unreadable) {
            throw new CannotProceed("The folder " + folder + " cannot be read (" + unreadable.getMessage() + ").");
        }
        return List.copyOf(found);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.net.URI;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Offsets as lines and columns, and files as addresses, as the Language Server Protocol 3.17 counts and writes them. */
final class ProtocolPositions {
    private ProtocolPositions() {
    }

    /** The protocol counts from 0, and columns in UTF-16 units. */
    static Position position(SourceText text, int offset) {
        int line = text.line(offset);
        return new Position(line - 1, text.column(offset) - 1);
    }

    /** The offset of a position; of one behind the end, the end. */
    static int offset(SourceText text, Position position) {
        String content = text.content();
        int offset = 0;
        for (int line = 0; line < position.getLine(); line++) {
            int end = content.indexOf('\n', offset);
            if (end < 0) {
                return content.length();
            }
            offset = end + 1;
        }
        int end = content.indexOf('\n', offset);
        return Math.min(offset + Math.max(0, position.getCharacter()), end < 0 ? content.length() : end);
    }

    static Range range(SourceRange at) {
        return new Range(position(at.source(), at.offset()), position(at.source(), at.end()));
    }

    static Location location(SourceRange at) {
        return new Location(address(at.source().name()), range(at));
    }

    /** The path of a file by its address; the address itself where it is no file's. */
    static String path(String address) {
        try {
            return Path.of(URI.create(address)).toString();
        } catch (IllegalArgumentException | java.nio.file.FileSystemNotFoundException notAFile) {
            return address;
        }
    }

    static String address(String path) {
        try {
            return Path.of(path).toUri().toString();
        } catch (InvalidPathException notAFile) {
            return path;
        }
    }
}

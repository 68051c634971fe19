/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.Comparator;
import java.util.List;
import org.faultwright.procedure.SourceRange;

/** Where the places of a text are after a fix. */
public final class MovedText {
    private final String file;
    private final List<Fix.Edit> edits;

    public MovedText(Fix fix) {
        this.file = fix.edits().get(0).at().source().name();
        this.edits = fix.edits().stream().sorted(Comparator.comparingInt(edit -> edit.at().offset())).toList();
    }

    /** Whether a place before the fix is a place after it. What is put in at the very place may stand before or behind it. */
    public boolean isSamePlace(SourceRange before, SourceRange after) {
        if (!before.source().name().equals(after.source().name())) {
            return false;
        }
        return before.source().name().equals(file)
                ? after.offset() == moved(before.offset(), false) || after.offset() == moved(before.offset(), true)
                : before.offset() == after.offset();
    }

    private int moved(int offset, boolean behindInsertions) {
        int shift = 0;
        for (Fix.Edit edit : edits) {
            int from = edit.at().offset();
            if (from > offset || from == offset && !(behindInsertions && edit.at().length() == 0)) {
                break;
            }
            if (edit.at().end() > offset) {
                return from + shift;
            }
            shift += edit.replacement().length() - edit.at().length();
        }
        return offset + shift;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Where a clause of a block goes and how it is taken out, with the layout and the remarks around it left as they are. */
final class ClauseText {
    private static final String INDENT = "    ";

    private final SourceText source;
    private final String text;
    /** The same without remarks and words in quotation marks. */
    private final String signs;

    ClauseText(SourceText source) {
        this.source = source;
        this.text = source.content();
        this.signs = Remarks.blanked(text);
    }

    Fix.Edit inserted(int offset, String words) {
        return new Fix.Edit(new SourceRange(source, offset, 0), words);
    }

    static Fix.Edit replaced(SourceRange at, String words) {
        return new Fix.Edit(at, words);
    }

    /** As the first clause of a block; absent where its text is broken. @param nameEnd where the name of the block ends */
    Optional<Fix.Edit> first(SourceRange block, int nameEnd, String clause) {
        int brace = signs.indexOf('{', nameEnd);
        return brace < 0 || brace >= block.end() ? Optional.empty() : Optional.of(behind(block, brace + 1, clause));
    }

    /** As the clause behind another one, on a line of its own; in a block of one line on that line. */
    Fix.Edit behind(SourceRange block, int end, String clause) {
        if (block.text().indexOf('\n') < 0) {
            return inserted(end, " " + clause);
        }
        int line = lineEndBehind(end);
        return line < 0 ? inserted(end, "\n" + indent(block) + INDENT + clause + (isBlankOrLineEnd(end) ? "" : "\n" + indent(block) + INDENT))
                : inserted(line, "\n" + indent(block) + INDENT + clause);
    }

    private boolean isBlankOrLineEnd(int at) {
        return at >= text.length() || text.charAt(at) == '\n' || text.charAt(at) == '\r';
    }

    /** The end of the line, where only a remark stands before it; else -1. */
    private int lineEndBehind(int from) {
        for (int i = from; i < signs.length(); i++) {
            char sign = signs.charAt(i);
            if (sign == '\n' || sign == '\r') {
                // a remark that goes on in the next line is not cut
                return text.substring(from, i).contains("/*") && !text.substring(from, i).contains("*/") ? -1 : i;
            }
            if (sign != ' ' && sign != '\t') {
                return -1;
            }
        }
        return signs.length();
    }

    private String indent(SourceRange block) {
        int start = lineStart(block.offset());
        int end = start;
        while (end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '\t')) {
            end++;
        }
        return text.substring(start, end);
    }

    int lineStart(int offset) {
        return text.lastIndexOf('\n', offset - 1) + 1;
    }

    /** Takes a clause out, from its word to the end of its value, with its line where nothing else stands there. */
    Optional<Fix.Edit> without(String keyword, SourceRange value) {
        String before = signs.substring(0, value.offset()).stripTrailing();
        if (!before.endsWith(keyword) || !Remarks.in(text.substring(before.length(), value.offset())).isEmpty()) {
            return Optional.empty();
        }
        int from = before.length() - keyword.length();
        int to = value.end();
        int start = lineStart(from);
        int end = text.indexOf('\n', to);
        if (end >= 0 && text.substring(start, from).isBlank() && text.substring(to, end).isBlank()) {
            return Optional.of(new Fix.Edit(new SourceRange(source, start, end + 1 - start), ""));
        }
        while (from > start && (text.charAt(from - 1) == ' ' || text.charAt(from - 1) == '\t')) {
            from--;
        }
        return Optional.of(new Fix.Edit(new SourceRange(source, from, to - from), ""));
    }

    /** The words in quotation marks that follow a name, if they do. */
    Optional<SourceRange> quotedBehind(int nameEnd) {
        int from = nameEnd;
        while (from < signs.length() && Character.isWhitespace(signs.charAt(from))) {
            from++;
        }
        int to = from < signs.length() && signs.charAt(from) == '"' ? signs.indexOf('"', from + 1) : -1;
        return to < 0 ? Optional.empty() : Optional.of(new SourceRange(source, from, to + 1 - from));
    }

    /** Where a sign or word of the language stands first between two places, outside remarks and quotation marks. */
    Optional<SourceRange> sign(String sign, int from, int to) {
        int at = signs.indexOf(sign, from);
        return at < 0 || at + sign.length() > to ? Optional.empty() : Optional.of(new SourceRange(source, at, sign.length()));
    }

    /** The beginning of the line of a block, or of the remarks that stand right above it. */
    int aboveRemarks(int offset) {
        int start = lineStart(offset);
        while (start > 0) {
            int before = lineStart(start - 1);
            if (!text.substring(before, start).strip().startsWith("//")) {
                break;
            }
            start = before;
        }
        return start;
    }

    /** Behind a block and a remark on its last line. */
    int behindBlock(SourceRange block) {
        int line = lineEndBehind(block.end());
        return line < 0 ? block.end() : line;
    }

    int end() {
        return text.length();
    }

    /** In the order of the text, those at one place made one. */
    static List<Fix.Edit> merged(List<Fix.Edit> edits) {
        List<Fix.Edit> merged = new ArrayList<>();
        List<Fix.Edit> sorted = edits.stream().sorted(Comparator.comparingInt((Fix.Edit edit) -> edit.at().offset())
                .thenComparing(edit -> edit.at().length() > 0)).toList();
        for (Fix.Edit edit : sorted) {
            Fix.Edit last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (last != null && last.at().offset() == edit.at().offset()) {
                merged.set(merged.size() - 1, new Fix.Edit(last.at().length() > edit.at().length() ? last.at() : edit.at(), last.replacement() + edit.replacement()));
            } else {
                merged.add(edit);
            }
        }
        return List.copyOf(merged);
    }
}

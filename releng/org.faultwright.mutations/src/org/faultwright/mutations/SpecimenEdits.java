/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Changes of a text by what the model knows of it. */
final class SpecimenEdits {
    private static final Pattern WORD_BEFORE = Pattern.compile("[\\p{L}-]+\\s*$");

    private SpecimenEdits() {
    }

    static Fix.Edit replace(SourceRange at, String text) {
        return at.length() == 0 ? nothing(at) : new Fix.Edit(at, text);
    }

    static Fix.Edit delete(SourceRange at) {
        return new Fix.Edit(at, "");
    }

    static Fix.Edit insertBefore(SourceRange at, String text) {
        return at.length() == 0 ? nothing(at) : new Fix.Edit(new SourceRange(at.source(), at.offset(), 0), text);
    }

    static Fix.Edit insertAfter(SourceRange at, String text) {
        return at.length() == 0 ? nothing(at) : new Fix.Edit(new SourceRange(at.source(), at.end(), 0), text);
    }

    /** What is understood without being written cannot be changed: a seed with such an edit is none. */
    private static Fix.Edit nothing(SourceRange at) {
        return new Fix.Edit(at, "");
    }

    static boolean isNothing(Fix.Edit edit) {
        return edit.at().length() == 0 && edit.replacement().isEmpty();
    }

    /** Just inside the closing brace of a declaration. */
    static Fix.Edit insertInside(SourceRange declaration, String text) {
        return new Fix.Edit(new SourceRange(declaration.source(), declaration.end() - 1, 0), " " + text + " ");
    }

    /** The changes of one text with each arrow written out that ran on to a step below which is no more below. */
    static Fix.Edit[] kept(Specimen specimen, Fix.Edit... edits) {
        return KeptArrows.kept(specimen.procedure(), new Fix("", List.of(edits))).edits().toArray(Fix.Edit[]::new);
    }

    /** A value with the keywords right before it, such as "takes 1 min". */
    static SourceRange withKeywords(SourceRange value, String keywords) {
        String before = value.source().content().substring(0, value.offset());
        Matcher matcher = Pattern.compile("\\b" + keywords.replace(" ", "\\s+") + "\\s+$").matcher(before);
        if (!matcher.find()) {
            throw new IllegalArgumentException("'" + keywords + "' does not stand before " + value);
        }
        return between(value.source(), matcher.start(), value.end());
    }

    /** One of a list with a comma before or behind it; the only one with its keyword. */
    static SourceRange fromList(SourceRange item) {
        String content = item.source().content();
        int behind = skip(content, item.end());
        if (behind < content.length() && content.charAt(behind) == ',') {
            return between(item.source(), item.offset(), skip(content, behind + 1));
        }
        String before = content.substring(0, item.offset()).stripTrailing();
        if (before.endsWith(",")) {
            return between(item.source(), before.length() - 1, item.end());
        }
        Matcher keyword = WORD_BEFORE.matcher(content.substring(0, item.offset()));
        return between(item.source(), keyword.find() ? keyword.start() : item.offset(), item.end());
    }

    private static int skip(String content, int offset) {
        int at = offset;
        while (at < content.length() && Character.isWhitespace(content.charAt(at))) {
            at++;
        }
        return at;
    }

    static SourceRange between(SourceText source, int from, int to) {
        return new SourceRange(source, from, to - from);
    }

    /** The first place of a pattern within a range; its first group where it has one. */
    static java.util.Optional<SourceRange> first(SourceRange within, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(within.text());
        if (!matcher.find()) {
            return java.util.Optional.empty();
        }
        int group = matcher.groupCount() > 0 ? 1 : 0;
        return java.util.Optional.of(between(within.source(), within.offset() + matcher.start(group), within.offset() + matcher.end(group)));
    }
}

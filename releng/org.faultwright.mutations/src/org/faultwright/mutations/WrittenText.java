/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.Fix;

/** What a text must keep when something is written into it: its remarks, its words in quotation marks, the names it declares; read without the parser. */
record WrittenText(List<String> remarks, List<String> strings, Set<String> names) {
    private static final Pattern PART = Pattern.compile("(?<remark>//[^\\n]*|/\\*[\\s\\S]*?\\*/)|(?<string>\"(?:\\\\.|[^\"\\\\])*\")");
    private static final Pattern DECLARED = Pattern.compile("(?m)^\\s*(?:procedure|library|condition|instrument|point|part|indicator|note|routine|fault|check|observe"
            + "|measure|do|calculate|perform|conclude)\\s+([\\p{L}_][\\p{L}\\d_]*)\\s+[\"{]");

    static WrittenText of(String text) {
        List<String> remarks = new ArrayList<>();
        List<String> strings = new ArrayList<>();
        Matcher part = PART.matcher(text);
        while (part.find()) {
            (part.group("remark") != null ? remarks : strings).add(part.group().strip());
        }
        Set<String> names = new HashSet<>();
        Matcher declared = DECLARED.matcher(text);
        while (declared.find()) {
            names.add(declared.group(1));
        }
        return new WrittenText(remarks, strings, names);
    }

    /** What of this text is not in the other, in words; absent where nothing is lost. @param told words that speak of what is meant to go */
    Optional<String> lost(WrittenText after, String told) {
        return missing(remarks, after.remarks).map(one -> "the remark " + one)
                .or(() -> names.stream().filter(name -> !after.names.contains(name) && !told.contains(name)).findFirst().map(name -> "the name " + name));
    }

    /** The same for a text that may only grow. */
    Optional<String> lostAny(WrittenText after) {
        return lost(after, "").or(() -> missing(strings, after.strings).map(one -> "the words " + one));
    }

    private static Optional<String> missing(List<String> before, List<String> after) {
        List<String> left = new ArrayList<>(after);
        return before.stream().filter(one -> !left.remove(one)).findFirst();
    }

    /** What is wrong with the changes of a fix by themselves: two that overlap, or one that cannot be taken back. */
    static Optional<String> unsound(Fix fix, String before) {
        List<Fix.Edit> edits = fix.edits().stream().sorted(Comparator.comparingInt(edit -> edit.at().offset())).toList();
        StringBuilder after = new StringBuilder();
        StringBuilder back = new StringBuilder();
        int at = 0;
        for (int i = 0; i < edits.size(); i++) {
            Fix.Edit edit = edits.get(i);
            if (edit.at().offset() < at || i > 0 && edits.get(i - 1).at().offset() == edit.at().offset()) {
                return Optional.of("two changes at one place");
            }
            String kept = before.substring(at, edit.at().offset());
            after.append(kept).append(edit.replacement());
            back.append(kept).append(before, edit.at().offset(), edit.at().end());
            at = edit.at().end();
        }
        after.append(before, at, before.length());
        back.append(before, at, before.length());
        return !back.toString().equals(before) ? Optional.of("it cannot be undone")
                : !after.toString().equals(fix.applied()) ? Optional.of("its changes depend on their order") : Optional.empty();
    }
}

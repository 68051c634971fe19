/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.SourceRange;

/**
 * One change of a text, ready to be made.
 *
 * @param at    where it is made, for the report
 * @param edits what is changed, in one file or in several
 * @param names what a finding about it may speak of: the thing changed, and the names taken out or put in
 * @param equal why the changed text means the same as before; empty where it does not
 */
record Seed(SourceRange at, List<Fix.Edit> edits, Set<String> names, Optional<String> equal) {
    private static final Pattern COMMENT = Pattern.compile("//[^\\n]*|/\\*[\\s\\S]*?\\*/");
    private static final Pattern NAME = Pattern.compile("\\p{L}[\\p{L}\\d_]*");

    /** A change within a declaration. */
    static Seed in(Declaration changed, Fix.Edit... edits) {
        Set<String> names = new HashSet<>(Set.of(changed.name().text()));
        for (Fix.Edit edit : edits) {
            addNames(edit.at().text(), names);
            addNames(edit.replacement(), names);
        }
        return new Seed(edits[0].at(), List.of(edits), names, Optional.empty());
    }

    /** A change outside any declaration, such as in the heading. */
    static Seed at(SourceRange at, Fix.Edit... edits) {
        Set<String> names = new HashSet<>();
        for (Fix.Edit edit : edits) {
            addNames(edit.at().text(), names);
            addNames(edit.replacement(), names);
        }
        return new Seed(at, List.of(edits), names, Optional.empty());
    }

    Seed with(Fix.Edit edit) {
        List<Fix.Edit> more = new ArrayList<>(edits);
        more.add(edit);
        Set<String> spoken = new HashSet<>(names);
        addNames(edit.at().text(), spoken);
        addNames(edit.replacement(), spoken);
        return new Seed(at, more, spoken, equal);
    }

    Seed naming(String name) {
        Set<String> more = new HashSet<>(names);
        more.add(name);
        return new Seed(at, edits, more, equal);
    }

    /** The same, with a reason why it changes nothing that matters where there is one. */
    Seed equalFor(Optional<String> reason) {
        return new Seed(at, edits, names, reason);
    }

    private static void addNames(String text, Set<String> names) {
        Matcher matcher = NAME.matcher(text);
        while (matcher.find()) {
            names.add(matcher.group());
        }
    }

    /** The changed texts by file name. */
    Map<String, String> texts() {
        Map<String, List<Fix.Edit>> byFile = new HashMap<>();
        edits.forEach(edit -> byFile.computeIfAbsent(edit.at().source().name(), file -> new ArrayList<>()).add(edit));
        Map<String, String> texts = new HashMap<>();
        byFile.forEach((file, changes) -> texts.put(file, new Fix("Seed a defect", changes).applied()));
        return texts;
    }

    /** Whether the finding stands where the change was made, or speaks of what was changed. */
    boolean isSpokenOfBy(Finding finding) {
        Set<String> spoken = new HashSet<>();
        addNames(finding.message(), spoken);
        addNames(finding.at().text(), spoken);
        finding.path().forEach(step -> addNames(step.step(), spoken));
        return isBeside(finding) || spoken.stream().anyMatch(names::contains);
    }

    /** On the same line or the next, or with nothing but blanks and comments between. */
    private boolean isBeside(Finding finding) {
        if (!finding.at().source().name().equals(at.source().name())) {
            return false;
        }
        String changed = finding.at().source().content();
        int from = Math.min(at.offset(), finding.at().offset());
        int to = Math.max(at.offset(), finding.at().offset());
        return Math.abs(finding.at().line() - at.line()) <= 1
                || COMMENT.matcher(changed.substring(from, Math.min(to, changed.length()))).replaceAll("").isBlank();
    }
}

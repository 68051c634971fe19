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
 */
record Seed(SourceRange at, List<Fix.Edit> edits, Set<String> names) {
    private static final Pattern NAME = Pattern.compile("\\p{L}[\\p{L}\\d_]*");

    /** A change within a declaration. */
    static Seed in(Declaration changed, Fix.Edit... edits) {
        Set<String> names = new HashSet<>(Set.of(changed.name().text()));
        for (Fix.Edit edit : edits) {
            addNames(edit.at().text(), names);
            addNames(edit.replacement(), names);
        }
        return new Seed(edits[0].at(), List.of(edits), names);
    }

    /** A change outside any declaration, such as in the heading. */
    static Seed at(SourceRange at, Fix.Edit... edits) {
        Set<String> names = new HashSet<>();
        for (Fix.Edit edit : edits) {
            addNames(edit.at().text(), names);
            addNames(edit.replacement(), names);
        }
        return new Seed(at, List.of(edits), names);
    }

    Seed with(Fix.Edit edit) {
        List<Fix.Edit> more = new ArrayList<>(edits);
        more.add(edit);
        return new Seed(at, more, names);
    }

    Seed naming(String name) {
        Set<String> more = new HashSet<>(names);
        more.add(name);
        return new Seed(at, edits, more);
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
        boolean sameLine = finding.at().source().name().equals(at.source().name())
                && Math.abs(finding.at().line() - at.line()) <= 1;
        return sameLine || spoken.stream().anyMatch(names::contains);
    }
}

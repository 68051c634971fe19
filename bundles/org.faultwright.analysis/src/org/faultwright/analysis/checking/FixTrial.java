/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.MovedText;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/**
 * Tries a fix before it is offered: the text is changed, read and checked again in full. A fix holds when its finding is
 * gone and nothing is found that was not found before, at its place moved along with the text.
 */
public final class FixTrial {
    private final Function<SourceText, Document> reader;
    private final Checker checker;
    private final Optional<Subject> origin;

    /** @param reader reads a changed text with the libraries of the text that was checked. @param checker with every rule */
    public FixTrial(Function<SourceText, Document> reader, Checker checker) {
        this(reader, checker, Optional.empty());
    }

    private FixTrial(Function<SourceText, Document> reader, Checker checker, Optional<Subject> origin) {
        this.reader = reader;
        this.checker = checker;
        this.origin = origin;
    }

    /** The same for fixes of one text, which has been checked: what holds whatever a fix changes is not looked for again. */
    public FixTrial of(Subject checked) {
        return new FixTrial(reader, checker, Optional.of(checked));
    }

    /** The same findings, each with those of its fixes alone that hold. @param most how many fixes are tried; the rest are left out */
    public List<Finding> tried(List<Finding> found, int most) {
        List<Finding> tried = new ArrayList<>();
        int left = most;
        for (Finding finding : found) {
            List<Fix> some = finding.fixes().subList(0, Math.min(left, finding.fixes().size()));
            left -= some.size();
            tried.add(finding.withFixes(some.stream().filter(fix -> holds(finding, fix, found)).toList()));
        }
        return List.copyOf(tried);
    }

    /** @param found everything that is found in the text as it stands */
    public List<Fix> holding(Finding finding, List<Finding> found) {
        return finding.fixes().stream().filter(fix -> holds(finding, fix, found)).toList();
    }

    /** @param found everything that is found in the text as it stands */
    public boolean holds(Finding finding, Fix fix, List<Finding> found) {
        return !fix.edits().isEmpty() && added(finding, fix, found).isEmpty();
    }

    /** What would be found after the fix and was not found before it, its own finding included where that stays. */
    public List<Finding> added(Finding finding, Fix fix, List<Finding> found) {
        List<Finding> left = new ArrayList<>(found);
        left.stream().filter(one -> one.withFixes(List.of()).equals(finding.withFixes(List.of()))).findFirst().ifPresent(left::remove);
        return added(fix, left);
    }

    /** What would be found after a change and was not found before it. @param found everything that is found in the text as it stands */
    public List<Finding> added(Fix fix, List<Finding> found) {
        SourceText before = fix.edits().get(0).at().source();
        MovedText moved = new MovedText(fix);
        List<Finding> left = new ArrayList<>(found);
        List<Finding> added = new ArrayList<>();
        Subject changed = checker.subject(reader.apply(new SourceText(before.name(), fix.applied())));
        origin.ifPresent(checked -> BetterOrder.handOn(checked, changed));
        for (Finding after : checker.check(changed)) {
            if (!takeOut(left, after, moved)) {
                added.add(after);
            }
        }
        return added.isEmpty() ? List.of() : withoutWaiting(added, before, moved);
    }

    /** What waited for the words that a fix mends is told behind it, and is nothing new. */
    private List<Finding> withoutWaiting(List<Finding> added, SourceText before, MovedText moved) {
        List<Finding> waited = new ArrayList<>(checker.assess(checker.subject(reader.apply(before))).waiting());
        return added.stream().filter(after -> !takeOut(waited, after, moved)).toList();
    }

    /** The same place and weight first: the words of a finding change where it names what was changed. */
    private static boolean takeOut(List<Finding> left, Finding after, MovedText moved) {
        for (Finding before : left) {
            if (before.rule().equals(after.rule()) && before.severity() == after.severity()
                    && (moved.isSamePlace(before.at(), after.at()) || before.message().equals(after.message()))) {
                left.remove(before);
                return true;
            }
        }
        return false;
    }
}

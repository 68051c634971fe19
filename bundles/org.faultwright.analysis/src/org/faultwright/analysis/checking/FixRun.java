/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceText;

/** A text while fixes are applied to it one after the other: each is tried in full on the text that the one before it left. */
public final class FixRun {
    /** A fix that was applied, and the finding that it removed, both in the text before it. */
    public record AppliedFix(Finding finding, Fix fix) {
    }

    private final Function<SourceText, Document> reader;
    private final Checker checker;
    private final FixTrial trial;
    /** Tried in vain already; a text with many findings would be checked too often. */
    private final Set<String> inVain = new HashSet<>();
    private Document document;
    private List<Finding> found;

    /** @param reader reads a changed text with the libraries of the text. @param checker with every rule */
    public FixRun(Function<SourceText, Document> reader, Checker checker, Document document) {
        this.reader = reader;
        this.checker = checker;
        this.trial = new FixTrial(reader, checker);
        this.document = document;
        this.found = checker.check(document);
    }

    /** The text as the fixes have left it. */
    public SourceText now() {
        return document.source();
    }

    /** What is found in it now; what is wrong in a library it uses belongs to that library. */
    public List<Finding> own() {
        return found.stream().filter(finding -> finding.at().source().name().equals(now().name())).toList();
    }

    /** What cannot be read in it: that no fix is offered says nothing of what stands there. */
    public List<ReadingProblem> unread() {
        return document.problems();
    }

    /** Those fixes of a finding that were tried and hold. */
    public List<Fix> holding(Finding finding) {
        return trial.holding(finding, found);
    }

    /**
     * Applies a fix of the first finding that is wanted and has one that holds.
     *
     * @param chosen which of its fixes that hold, counted from 1
     * @return what was done; absent when there is nothing more to do
     */
    public Optional<AppliedFix> next(Predicate<Finding> wanted, int chosen) {
        for (Finding finding : own()) {
            if (!wanted.test(finding) || finding.fixes().isEmpty() || inVain.contains(finding.rule() + finding.message())) {
                continue;
            }
            List<Fix> fixes = holding(finding);
            if (fixes.size() >= chosen) {
                Fix fix = fixes.get(chosen - 1);
                document = reader.apply(new SourceText(now().name(), fix.applied()));
                found = checker.check(document);
                return Optional.of(new AppliedFix(finding, fix));
            }
            inVain.add(finding.rule() + finding.message());
        }
        return Optional.empty();
    }
}

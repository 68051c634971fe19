/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Document;

/** Runs rules over a document. A rule that crashes is reported by its id; the others go on. */
public final class Checker {
    /** By file, place, severity, rule and words. */
    public static final Comparator<Finding> READING_ORDER = Comparator
            .comparing((Finding finding) -> finding.at().source().name())
            .thenComparingInt(finding -> finding.at().offset())
            .thenComparing(Finding::severity)
            .thenComparing(Finding::rule)
            .thenComparing(Finding::message);

    private final List<Rule> rules;
    private final Optional<LocalDate> today;

    public Checker() {
        this(RuleSet.all(), Optional.empty());
    }

    /** @param today the day that due dates are held against */
    public Checker(List<Rule> rules, Optional<LocalDate> today) {
        this.rules = List.copyOf(rules);
        this.today = today;
    }

    /** The findings in reading order; deterministic. */
    public List<Finding> check(Document document) {
        return check(subject(document));
    }

    /** The document as the rules will look at it. */
    public Subject subject(Document document) {
        return new Subject(document, today);
    }

    public List<Finding> check(Subject subject) {
        List<Finding> found = new ArrayList<>();
        for (Rule rule : rules) {
            found.addAll(run(rule, subject));
        }
        found.sort(READING_ORDER);
        return List.copyOf(found);
    }

    private static List<Finding> run(Rule rule, Subject subject) {
        Findings findings = new Findings(rule.header(), subject.shared(QuotedNames.class, one -> new QuotedNames(one.document())));
        try {
            rule.check(subject, findings);
            return findings.reported();
        } catch (RuntimeException | StackOverflowError crash) {
            List<Finding> soFar = new ArrayList<>(findings.reported());
            soFar.add(new Finding("rule-failed", Severity.ERROR, subject.document().name().at(),
                    "The rule " + rule.header().id() + " stopped with " + crash + ".",
                    "Report this with the text it was checking; the other rules have run.", List.of(), List.of()));
            return soFar;
        }
    }
}

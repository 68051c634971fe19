/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.OnDemand;
import org.faultwright.analysis.QuotedNames;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.analysis.measurement.KnownBudgets;
import org.faultwright.procedure.Document;

/** Runs rules over a document. A rule that crashes is reported by its id, and where it did stands in the log ({@link System.Logger}); the others go on. */
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
    private final KnownBudgets budgets = new KnownBudgets();

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
        Subject subject = new Subject(document, today);
        subject.takeOver(KnownBudgets.class, budgets);
        return subject;
    }

    /** The findings that stand, in reading order. */
    public List<Finding> check(Subject subject) {
        return assess(subject).findings();
    }

    /** What stands, and what waits because it may only follow from something else that was found. */
    public Assessment assess(Subject subject) {
        QuotedNames names = QuotedNames.of(subject);
        List<Finding> found = new ArrayList<>();
        for (Rule rule : rules) {
            run(rule, subject).forEach(said -> found.add(said.quoted(names)));
        }
        found.sort(READING_ORDER);
        return RootCauses.part(subject, found);
    }

    /** Checks one text again and again while it changes. */
    public ChangingCheck changing() {
        return new ChangingCheck(rules, today);
    }

    /**
     * What a rule said.
     *
     * @param finding without quotation marks around the names in it
     * @param crash   that the rule stopped; nothing is quoted then
     */
    record UnquotedFinding(Finding finding, boolean crash) {
        Finding quoted(QuotedNames names) {
            return crash ? finding : names.in(finding);
        }
    }

    /** No fix leads a step elsewhere without saying so. */
    private static Finding kept(Finding finding, Subject subject) {
        return finding.fixes().isEmpty() ? finding : new Finding(finding.rule(), finding.severity(), finding.at(), finding.message(), finding.advice(),
                finding.path(), finding.fixes().stream().map(KeptArrows.in(subject)::kept).toList());
    }

    /** What each rule said of a subject: the search for a better order asks all others what stands in the text, before or after they are asked themselves. */
    private static final class Heard {
        private final Map<Rule, OnDemand<List<UnquotedFinding>>> byRule = new ConcurrentHashMap<>();
    }

    /** What a rule says of a subject, which it is asked once. */
    static List<UnquotedFinding> run(Rule rule, Subject subject) {
        return subject.shared(Heard.class, any -> new Heard()).byRule.computeIfAbsent(rule, any -> new OnDemand<>()).get(() -> ask(rule, subject));
    }

    private static List<UnquotedFinding> ask(Rule rule, Subject subject) {
        Findings findings = new Findings(rule.header());
        List<UnquotedFinding> said = new ArrayList<>();
        try {
            rule.check(subject, findings);
            findings.reported().forEach(finding -> said.add(new UnquotedFinding(kept(finding, subject), false)));
        } catch (RuntimeException | StackOverflowError crash) {
            findings.reported().forEach(finding -> said.add(new UnquotedFinding(finding, false)));
            System.getLogger(Checker.class.getName()).log(System.Logger.Level.ERROR,
                    "The rule " + rule.header().id() + " stopped on " + subject.document().name().at().source().name(), crash);
            said.add(new UnquotedFinding(new Finding("rule-failed", Severity.ERROR, subject.document().name().at(),
                    "The rule " + rule.header().id() + " stopped with " + crash + ".",
                    "Report this with the text it was checking and the log of failures; the other rules have run.", List.of(), List.of()), true));
        }
        return List.copyOf(said);
    }
}

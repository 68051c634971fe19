/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.QuotedNames;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.Checker.UnquotedFinding;
import org.faultwright.analysis.measurement.KnownBudgets;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;

/**
 * Checks one text again and again while it changes, and finds each time what a check from nothing finds. A rule is asked again only where the
 * change is within its {@link Reach}. May be shared between threads.
 */
public final class ChangingCheck {
    /** @param quoted as it is told */
    private record KnownFinding(UnquotedFinding said, Finding quoted) {
    }

    private final List<Rule> rules;
    private final Optional<LocalDate> today;
    private Optional<Document> last = Optional.empty();
    private Optional<QuotedNames> lastNames = Optional.empty();
    private List<List<KnownFinding>> known = List.of();

    ChangingCheck(List<Rule> rules, Optional<LocalDate> today) {
        this.rules = rules;
        this.today = today;
    }

    /** What stands in the text, and what waits because it may only follow from something else that was found. */
    public synchronized Assessment assess(Subject subject) {
        Optional<ChangedText> change = last.flatMap(before -> ChangedText.between(before, subject.document()));
        QuotedNames names = QuotedNames.of(subject);
        boolean namesAsBefore = lastNames.filter(names::isSame).isPresent();
        Optional<Procedure> changed = change.map(ChangedText::changedBlocks);
        Optional<Subject> part = changed.map(blocks -> new Subject(blocks, subject.scope(), today));
        part.ifPresent(one -> one.takeOver(KnownBudgets.class, KnownBudgets.of(subject)));
        Set<Reach> beyond = EnumSet.noneOf(Reach.class);
        change.ifPresent(known -> Stream.of(Reach.values()).filter(known::isBeyond).forEach(beyond::add));
        List<List<KnownFinding>> now = new ArrayList<>(rules.size());
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < rules.size(); i++) {
            Rule rule = rules.get(i);
            List<KnownFinding> before = known.isEmpty() ? List.of() : known.get(i);
            Optional<List<KnownFinding>> kept = change.isEmpty() ? Optional.empty() : switch (rule.reach()) {
                case ONE_BLOCK -> beside(change.get(), rule, before, part.get(), names, namesAsBefore);
                case NAMES, PATHS, READINGS, MEANING, EVERYTHING -> beyond.contains(rule.reach()) ? moved(change.get(), before, names, namesAsBefore) : Optional.empty();
            };
            List<KnownFinding> all = kept.orElseGet(() -> Checker.run(rule, subject).stream().map(said -> new KnownFinding(said, said.quoted(names))).toList());
            now.add(all);
            all.forEach(one -> found.add(one.quoted()));
        }
        last = Optional.of(subject.document());
        lastNames = Optional.of(names);
        known = now;
        found.sort(Checker.READING_ORDER);
        return RootCauses.part(subject, found);
    }

    /** What was found beside the changed blocks, and what is found in them now; absent where it has to be looked for anew. */
    private static Optional<List<KnownFinding>> beside(ChangedText change, Rule rule, List<KnownFinding> before, Subject changed, QuotedNames names,
            boolean namesAsBefore) {
        Optional<List<KnownFinding>> kept = moved(change, before.stream().filter(one -> !change.wasAmongChanged(one.quoted().at())).toList(), names,
                namesAsBefore);
        return kept.map(rest -> {
            List<KnownFinding> all = new ArrayList<>(rest);
            for (UnquotedFinding said : Checker.run(rule, changed)) {
                if (said.crash() || change.isAmongChanged(said.finding().at())) {
                    all.add(new KnownFinding(said, said.quoted(names)));
                }
            }
            return all;
        });
    }

    /** Findings as they stand after the change; absent where it touches one of them, or a rule had stopped. */
    private static Optional<List<KnownFinding>> moved(ChangedText change, List<KnownFinding> before, QuotedNames names, boolean namesAsBefore) {
        List<KnownFinding> moved = new ArrayList<>(before.size());
        for (KnownFinding one : before) {
            Optional<Finding> plain = one.said().crash() ? Optional.empty() : change.moved(one.said().finding());
            if (plain.isEmpty()) {
                return Optional.empty();
            }
            UnquotedFinding said = new UnquotedFinding(plain.get(), false);
            moved.add(new KnownFinding(said, namesAsBefore ? change.moved(one.quoted()).orElseThrow() : said.quoted(names)));
        }
        return Optional.of(moved);
    }
}

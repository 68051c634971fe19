/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;

/** Something that is printed by its title and has none. */
public final class MissingTitle implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("missing-title", Severity.WARNING, Group.NAMES,
            "A step, fault or other thing that is printed by its title has none.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        titled(subject.document().name(), subject.document().title(), findings);
        Declarations own = subject.document().own();
        Stream.of(own.setUps(), own.instruments(), own.points(), own.parts(), own.indicators(), own.routines(), DocumentSteps.of(subject),
                subject.procedure().map(procedure -> procedure.faults()).orElseGet(List::of))
                .flatMap(List::stream).forEach(one -> titled((Declaration) one, findings));
    }

    private static void titled(Declaration one, Findings findings) {
        titled(one.name(), one.title(), findings);
    }

    private static void titled(Name name, String title, Findings findings) {
        if (title.isBlank() && !name.text().isEmpty()) {
            String proposed = name.spoken();
            SourceRange behind = new SourceRange(name.at().source(), name.at().end(), 0);
            boolean empty = !title.isEmpty() || standsEmpty(behind);
            findings.report(name.at(), name + " has no title to print.",
                    "Say in a few words, in quotation marks after the name, what a technician should read.",
                    empty ? new Fix[0] : new Fix[] {Fix.replacing("Add the title \"" + proposed + "\"", behind,
                            " \"" + proposed + "\"")});
        }
    }

    private static boolean standsEmpty(SourceRange behind) {
        return behind.source().content().substring(behind.offset()).stripLeading().startsWith("\"");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.NearNames;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;

/** A name that nothing is declared under; near names are proposed. */
public final class UnknownName implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unknown-name", Severity.ERROR, Group.NAMES,
            "A name that refers to nothing.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.NAMES;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        // a name that could not be read is empty; unreadable-text says so
        References.of(subject).stream().filter(reference -> !reference.known() && !reference.name().text().isEmpty())
                .forEach(reference -> report(reference, findings));
    }

    private static void report(Reference unknown, Findings findings) {
        String name = unknown.name().text();
        if (unknown.kind() == Reference.Kind.LIBRARY) {
            findings.report(unknown.name().at(), "There is no library \"" + name + "\" beside this file, in its folder \"library\""
                    + " or in the folders above.", "Write the library as " + name + ".procedure there, or name another.");
            return;
        }
        List<String> near = NearNames.of(name, unknown.among().get());
        if (unknown.kind() == Reference.Kind.ROUTINE && unknown.name().isUnderstood()) {
            findings.report(unknown.name().at(), "\"" + name + "\" does not say which routine it follows, and no routine is named like it.",
                    "Say it after \"by\", such as: perform " + name + " by " + near.stream().findFirst().or(() -> unknown.among().get().stream().findFirst())
                            .orElse("MakeSafe") + ".",
                    near.stream().map(one -> Fix.replacing("Add \"by " + one + "\"", unknown.name().at(), " by " + one)).toArray(Fix[]::new));
            return;
        }
        Fix[] fixes = near.stream().map(one -> Fix.replacing("Write " + one, unknown.name().at(), one)).toArray(Fix[]::new);
        findings.report(unknown.name().at(), "There is no " + unknown.kind().word() + " named \"" + name + "\".",
                near.isEmpty() ? "Declare it, or name one that is declared." : "Write \"" + String.join("\" or \"", near)
                        + "\" if that is meant, or declare it.", fixes);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;

/** A card without equipment, revision or complaints cannot be told from another. */
public final class MissingHeader implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("missing-header", Severity.WARNING, Group.RECORD,
            "A procedure does not say its equipment, its revision or its complaints.");
    private static final Pattern TITLE = Pattern.compile("\\s*\"[^\"\\\\\n]*+(?:\\\\.[^\"\\\\\n]*+){0,200}+\"");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().filter(procedure -> !procedure.name().text().isEmpty())
                .ifPresent(procedure -> check(procedure, findings));
    }

    private static void check(Procedure procedure, Findings findings) {
        SourceRange name = procedure.name().at();
        if (procedure.equipment().map(equipment -> equipment.title().isBlank()).orElse(true)) {
            findings.report(name, procedure.name() + " does not say what equipment it is for.",
                    "Add the line: equipment \"maker and model\" boards \"revision\".");
        }
        if (procedure.revision().isEmpty()) {
            findings.report(name, procedure.name() + " has no revision.",
                    "Add the line: revision 1 draft.", Fix.replacing("Add revision 1 draft", behindTitle(procedure),
                            "\nrevision 1 draft\n"));
        }
        if (procedure.complaints().isEmpty()) {
            findings.report(name, procedure.name() + " does not say which complaints it answers.",
                    "Add the line: complaints \"in the customer's words\".");
        }
    }

    private static SourceRange behindTitle(Procedure procedure) {
        SourceRange name = procedure.name().at();
        Matcher title = TITLE.matcher(name.source().content()).region(name.end(), name.source().content().length());
        return new SourceRange(name.source(), title.lookingAt() ? title.end() : name.end(), 0);
    }
}

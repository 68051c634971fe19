/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ThingKind;

/** A procedure's own declaration that no step refers to. What a library declares is for others. */
public final class UnusedDeclaration implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unused-declaration", Severity.ADVICE, Group.NAMES,
            "Something is declared in a procedure and never referred to.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> check(procedure, subject, References.of(subject), findings));
    }

    private static void check(Procedure procedure, Subject subject, List<Reference> references, Findings findings) {
        procedure.own().byKind().forEach((thing, declared) -> unused(thing, declared.stream()
                .filter(one -> !ChargeProofs.isPlaceInUnit(one, subject)).toList(), references, findings));
    }

    private static void unused(ThingKind thing, List<? extends Declaration> declared, List<Reference> references, Findings findings) {
        if (declared.isEmpty()) {
            return;
        }
        Reference.Kind kind = Reference.Kind.to(thing);
        boolean mayBeMeant = references.stream().anyMatch(reference -> reference.kind() == kind && !reference.known());
        if (mayBeMeant) {
            return;
        }
        Set<String> used = references.stream().filter(reference -> reference.kind() == kind)
                .map(reference -> reference.name().text()).collect(Collectors.toSet());
        declared.stream().filter(one -> !used.contains(one.name().text()) && !one.name().text().isEmpty())
                .forEach(one -> findings.report(one.name().at(), "Nothing refers to the " + thing.word() + " \"" + one.name() + "\".",
                        "Use it, or remove it.", Removal.of("Remove " + one.name(), one.at())));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;

/** Settings in one step that can never hold together. */
public final class ContradictoryNeeds implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("contradictory-needs", Severity.ERROR, Group.STATE,
            "A step needs, sets or proves conditions that can never hold together.");

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
        subject.document().own().setUps().forEach(setUp -> check("The set-up \"" + setUp.name() + "\" asks for", setUp.settings(), subject.scope(), findings));
        for (Step step : DocumentSteps.of(subject)) {
            check(step.name() + " needs", step.frame().needs(), subject.scope(), findings);
            check(step.name() + " sets", step.frame().sets(), subject.scope(), findings);
            for (Outcome outcome : step.outcomes()) {
                check(step.name() + " proves", outcome.proves(), subject.scope(), findings);
            }
        }
    }

    private static void check(String subject, List<Setting> settings, Scope scope, Findings findings) {
        for (int i = 0; i < settings.size(); i++) {
            Setting setting = settings.get(i);
            Optional<String> before = Contradictions.with(setting, others(setting, settings.subList(0, i)), scope);
            Optional<String> after = forcedFrom(setting, others(setting, settings.subList(i + 1, settings.size())), scope);
            before.or(() -> after).ifPresent(other -> findings.report(setting.at(),
                    subject + " " + Contradictions.spoken(setting) + " together with " + other
                            + "; the two cannot both hold.",
                    "Keep the one that is meant, or split the step in two."));
        }
    }

    /** Without what the same set-up asks for: that is told where the set-up is declared. */
    private static List<Setting> others(Setting setting, List<Setting> settings) {
        return settings.stream().filter(other -> !other.at().equals(setting.at())).toList();
    }

    /** Of two values written for one condition only the second is reported; a forced one wherever it stands. */
    private static Optional<String> forcedFrom(Setting setting, List<Setting> later, Scope scope) {
        return Contradictions.with(setting, later.stream()
                .filter(other -> !other.condition().text().equals(setting.condition().text())).toList(), scope);
    }
}

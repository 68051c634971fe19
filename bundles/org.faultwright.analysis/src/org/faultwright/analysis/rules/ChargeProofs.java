/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;

/** Every result that says a charge is absent. */
final class ChargeProofs {
    /** @param outcome the result that proves @param setting what it proves */
    record Claim(Step step, Outcome outcome, Setting setting, Condition condition) {
    }

    private final List<Claim> found = new ArrayList<>();

    private ChargeProofs(Subject subject) {
        for (Step step : Steps.of(subject)) {
            for (Outcome outcome : step.outcomes()) {
                outcome.proves().forEach(setting -> claimed(setting, subject)
                        .ifPresent(condition -> found.add(new Claim(step, outcome, setting, condition))));
            }
        }
    }

    /** The claims of a document's own steps. */
    static List<Claim> of(Subject subject) {
        return subject.shared(ChargeProofs.class, ChargeProofs::new).found;
    }

    /** The condition that a setting says is without charge. */
    static Optional<Condition> claimed(Setting setting, Subject subject) {
        return subject.scope().condition(setting.condition()).filter(condition -> isAbsence(condition, setting));
    }

    static boolean isAbsence(Condition condition, Setting setting) {
        return !condition.charged().isEmpty() && condition.has(setting.value())
                && !LiveMeasurement.isAmong(condition.charged(), setting.value());
    }
}

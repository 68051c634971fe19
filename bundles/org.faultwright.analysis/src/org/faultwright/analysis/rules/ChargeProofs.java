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
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** Every result that says a charge is absent. */
final class ChargeProofs {
    /** @param outcome the result that proves @param setting what it proves */
    record Claim(Step step, Outcome outcome, Setting setting, Condition condition) {
    }

    private final List<Claim> found = new ArrayList<>();

    private ChargeProofs(Subject subject) {
        for (Step step : DocumentSteps.of(subject)) {
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

    /**
     * Whether a procedure says so where a charge is proved gone: another place in every unit, which a library's routines call by one name. It says what
     * it carries, or every hazard that the library's has; who says neither hides what the library warns of.
     */
    static boolean isPlaceInUnit(Declaration own, Subject subject) {
        return own instanceof Point point && subject.procedure().isPresent() && subject.scope().conditions().stream().flatMap(condition -> condition.proved().stream())
                .flatMap(proof -> proof.points().stream()).anyMatch(name -> name.text().equals(own.name().text()))
                && (point.carries().isPresent() || hazards(point).containsAll(subject.document().libraries().stream().flatMap(library -> library.own().points().stream())
                        .filter(hidden -> hidden.name().text().equals(own.name().text())).flatMap(hidden -> hazards(hidden).stream()).toList()));
    }

    private static List<Hazard> hazards(Point point) {
        return point.hazards().stream().map(Written::value).toList();
    }

    static boolean isAbsence(Condition condition, Setting setting) {
        return condition.isWithoutCharge(setting.value());
    }
}

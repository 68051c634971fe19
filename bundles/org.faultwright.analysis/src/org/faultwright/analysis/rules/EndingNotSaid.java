/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Closures;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;

/**
 * A condition that does not say how it must be left, and a path on which that matters: it ends otherwise than the unit was found, or something
 * is changed that may be an opening while the circuit may be live. What must be put back is what counts as open ({@link Closures}).
 */
public final class EndingNotSaid implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("ending-not-said", Severity.WARNING, Group.STATE,
            "Something is changed live or left otherwise than it was found, and nothing says how it must be left.");

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
        ProcedurePaths.of(subject).ifPresent(paths -> paths.map().conditions().stream()
                .filter(condition -> condition.ends().isEmpty() && condition.charged().isEmpty() && !condition.values().isEmpty())
                .forEach(condition -> paths.states(condition).ifPresent(states -> check(paths, states, findings))));
    }

    private static void check(ProcedurePaths paths, ConditionStates states, Findings findings) {
        if (!changedLive(paths, states, findings) && !isOnlyFoundOut(paths, states.condition())) {
            leftChanged(paths, states, findings);
        }
    }

    private static boolean changedLive(ProcedurePaths paths, ConditionStates states, Findings findings) {
        Condition condition = states.condition();
        if (!condition.live().isEmpty() || condition.mayChangeLive()) {
            return false;
        }
        for (InlinedStep place : paths.map().places()) {
            Optional<Setting> change = place.sets().stream().filter(setting -> setting.condition().text().equals(condition.name().text()))
                    .filter(setting -> states.arriving(place).stream().anyMatch(value -> !value.text().equals(setting.value().text())))
                    .filter(setting -> !LiveWork.saysWhy(place.step())).findFirst();
            Optional<BenchStates.State> live = change.isEmpty() ? Optional.empty()
                    : paths.bench().at(place).stream().filter(state -> state.staysLive().isPresent()).findFirst();
            if (live.isPresent()) {
                Condition supply = live.get().staysLive().get();
                findings.report(PlaceText.at(place, change.get().at()), PlaceText.subject(place) + " sets " + Contradictions.spoken(change.get())
                        + " while " + supply.name() + " may be " + live.get().value(supply) + ", and nothing says how "
                        + condition.name() + " must be left.",
                        "Add to the condition how it must be left, such as: ends " + found(condition) + ". Where it is changed live in ordinary use, "
                                + "add: may change live.", live.get().path());
                return true;
            }
        }
        return false;
    }

    /** Such as that a copy of the data is kept: some outcome tells it, and no step changes it. */
    private static boolean isOnlyFoundOut(ProcedurePaths paths, Condition condition) {
        Predicate<Setting> ofIt = setting -> setting.condition().text().equals(condition.name().text());
        return condition.live().isEmpty() && condition.becomes().isEmpty() && paths.map().places().stream().flatMap(place -> place.sets().stream()).noneMatch(ofIt)
                && paths.map().places().stream().map(InlinedStep::step).filter(step -> step.outcomes().stream().anyMatch(outcome -> outcome.proves().stream().anyMatch(ofIt)))
                        .allMatch(step -> step.outcomes().stream().anyMatch(outcome -> outcome.proves().stream().noneMatch(ofIt)));
    }

    private static String found(Condition condition) {
        return condition.starts().orElse(condition.values().get(0)).text();
    }

    private static void leftChanged(ProcedurePaths paths, ConditionStates states, Findings findings) {
        Condition condition = states.condition();
        String found = found(condition);
        for (InlinedStep place : paths.map().places()) {
            List<Name> changed = place.step() instanceof Step.Conclude
                    ? states.holding(place).stream().filter(value -> !value.text().equals(found)).toList() : List.of();
            if (!changed.isEmpty()) {
                Shortest shortest = Shortest.of(changed, value -> states.pathHolding(place, value));
                findings.report(PlaceText.at(place), PlaceText.subject(place) + " is reached with " + condition.name() + " "
                        + shortest.value() + ", and nothing says how " + condition.name() + " must be left.",
                        "Add to the condition how it must be left, such as: ends " + found + ".", shortest.path());
                return;
            }
        }
    }
}

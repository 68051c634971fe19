/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/**
 * What becomes of a condition behind a step: a value that is set anew before anything asks for it may as well be
 * another. Followed here step by step, apart from the rules, so that a rule cannot excuse itself.
 */
final class ConditionLater {
    private final ProcedurePaths paths;

    ConditionLater(ProcedurePaths paths) {
        this.paths = paths;
    }

    private record Met(InlinedStep place, Set<String> unsure) {
    }

    /** Why it makes no difference what this step leaves there; empty where it may make one. */
    Optional<String> noMatter(Step step, Setting setting) {
        return isAsked(step, setting) ? Optional.empty()
                : Optional.of(setting.condition() + " is set again before anything asks for it");
    }

    /** Why it makes no difference that this step brings or needs the value; empty where it may make one. */
    Optional<String> broughtAnyway(Step step, Setting setting) {
        List<InlinedStep> places = places(step);
        boolean so = !places.isEmpty() && paths.map().scope().condition(setting.condition()).flatMap(paths::states)
                .map(states -> places.stream().filter(paths::reaches).flatMap(place -> states.arriving(place).stream())
                        .allMatch(value -> value.text().equals(setting.value().text()))).orElse(false);
        return so ? Optional.of("every path brings " + setting.condition() + " " + setting.value() + " anyway") : Optional.empty();
    }

    /** Why it makes no difference what cuts the point off: wherever it is read, nothing is live and nothing charged. Empty where it may. */
    Optional<String> deadAnyway(Point point) {
        List<InlinedStep> read = paths.map().places().stream().filter(paths::reaches).filter(place -> place.step() instanceof Step.Measure measure
                && measure.point().filter(name -> name.text().equals(point.name().text())).isPresent()).toList();
        boolean so = !read.isEmpty() && paths.map().conditions().stream().allMatch(condition -> Stream.concat(condition.live().stream(),
                condition.charged().stream()).map(Name::text).noneMatch(dangerous -> read.stream().anyMatch(place ->
                        place.needs().stream().noneMatch(need -> need.condition().text().equals(condition.name().text())
                                && !need.value().text().equals(dangerous)) && values(paths, condition.name(), place).contains(dangerous))));
        return so ? Optional.of("nothing is live or charged where " + point.name() + " is read") : Optional.empty();
    }

    /** Why a part named at this step is not handled live: the step sets every live condition to what is not. */
    Optional<String> switchesOff(Step step) {
        boolean so = step.frame().needs().stream().allMatch(need -> paths.map().scope().condition(need.condition()).stream()
                .filter(condition -> condition.live().stream().anyMatch(value -> value.text().equals(need.value().text())))
                .allMatch(condition -> step.frame().sets().stream().anyMatch(setting -> setting.condition().text().equals(need.condition().text())
                        && condition.live().stream().noneMatch(value -> value.text().equals(setting.value().text())))));
        return so ? Optional.of("the step switches off before it handles anything") : Optional.empty();
    }

    /** Whether no place of the changed procedure is come to with a value that it could not be come to with before. */
    boolean bringsNothingNew(Procedure changed) {
        ProcedurePaths after = ProcedurePaths.of(changed);
        Map<String, InlinedStep> before = paths.map().places().stream().collect(Collectors.toMap(InlinedStep::toString, place -> place, (one, other) -> one));
        return after.map().places().stream().filter(after::reaches).allMatch(place -> Optional.ofNullable(before.get(place.toString()))
                .filter(paths::reaches).map(same -> after.map().conditions().stream().allMatch(condition ->
                        values(paths, condition.name(), same).containsAll(values(after, condition.name(), place)))).orElse(false));
    }

    private static Set<String> values(ProcedurePaths paths, Name condition, InlinedStep place) {
        return paths.map().scope().condition(condition).flatMap(paths::states).map(states -> states.arriving(place).stream().map(Name::text).collect(Collectors.toSet())).orElse(Set.of());
    }

    private List<InlinedStep> places(Step step) {
        return paths.map().places().stream().filter(place -> place.isStep() && place.step().name().equals(step.name())).toList();
    }

    /** Whether it has the value that would be forced before the step: then neither way of leaving it changes it. */
    private boolean isSoAlready(Step step, Condition condition, Condition.Becomes becomes) {
        return paths.states(condition).map(states -> places(step).stream().filter(paths::reaches)
                .flatMap(place -> states.arriving(place).stream()).allMatch(value -> value.text().equals(becomes.value().text()))).orElse(false);
    }

    private boolean isAsked(Step step, Setting setting) {
        Set<String> touched = new HashSet<>(Set.of(setting.condition().text()));
        for (boolean grown = true; grown;) {
            grown = touched.addAll(paths.map().conditions().stream().filter(condition -> condition.becomes().stream()
                    .anyMatch(becomes -> touched.contains(becomes.when().condition().text()) && !isSoAlready(step, condition, becomes)))
                    .map(condition -> condition.name().text()).toList());
        }
        Set<Met> known = new HashSet<>();
        Deque<Met> open = new ArrayDeque<>();
        paths.map().places().stream().filter(place -> place.step().name().equals(step.name()) && !place.sets().isEmpty())
                .forEach(place -> goOn(place, touched, open));
        while (!open.isEmpty()) {
            Met met = open.pop();
            if (!met.unsure().isEmpty() && known.add(met)) {
                if (asks(met)) {
                    return true;
                }
                goOn(met.place(), without(met.unsure(), met.place().sets()), open);
            }
        }
        return false;
    }

    private void goOn(InlinedStep place, Set<String> unsure, Deque<Met> open) {
        for (Transition way : paths.map().ways(place)) {
            Set<String> left = without(unsure, way.outcome().map(outcome -> outcome.proves()).orElse(List.of()));
            Stream.concat(way.to().stream(), way.otherwise().stream()).forEach(to -> open.push(new Met(to, left)));
        }
    }

    /** What is set is sure again, and so is what that forces. */
    private Set<String> without(Set<String> unsure, List<Setting> set) {
        Set<String> left = new HashSet<>(unsure);
        set.forEach(setting -> {
            left.remove(setting.condition().text());
            paths.map().conditions().stream().filter(condition -> condition.becomes().stream().anyMatch(becomes ->
                    becomes.when().condition().text().equals(setting.condition().text())
                            && becomes.when().value().text().equals(setting.value().text())))
                    .forEach(condition -> left.remove(condition.name().text()));
        });
        return left;
    }

    private boolean asks(Met met) {
        InlinedStep place = met.place();
        Set<Condition> unsure = met.unsure().stream().flatMap(name -> paths.map().conditions().stream()
                .filter(condition -> condition.name().text().equals(name))).collect(Collectors.toSet());
        boolean dangerous = unsure.stream().anyMatch(condition -> !condition.live().isEmpty() || !condition.charged().isEmpty());
        boolean touches = !place.handles().isEmpty() || place.step() instanceof Step.Measure measure && measure.kind()
                .map(kind -> kind.value().needsDeadCircuit() || kind.value() == QuantityKind.DC_VOLTAGE || measure.point().isPresent()).orElse(true);
        boolean ends = place.step() instanceof Step.Conclude && unsure.stream().anyMatch(condition -> condition.ends().isPresent());
        return ends || dangerous && touches
                || place.needs().stream().anyMatch(need -> met.unsure().contains(need.condition().text()));
    }
}

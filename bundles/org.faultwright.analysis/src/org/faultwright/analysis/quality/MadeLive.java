/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.quality;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Closures;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;

/**
 * A place at which a unit that stands open, or that is not joined as it leaves, is made live.
 *
 * @param place     the step; in a routine with the steps that perform it
 * @param open      what is not as it must be at the end, such as {@code Cover removed}
 * @param told      whether a note about shock is read at the step, or at a step that performs it; about batteries where one is put in
 * @param dangerous whether the unit may hurt: some point of it carries a voltage that can, or none says what it carries, or a note about shock
 *                  is read anywhere in the procedure
 */
public record MadeLive(InlinedStep place, List<Setting> open, boolean told, boolean dangerous) {
    /** In the order of the shortest paths. */
    static List<MadeLive> of(Subject subject) {
        return ProcedurePaths.of(subject).filter(paths -> !paths.bench().live().isEmpty()).map(MadeLive::in).orElse(List.of());
    }

    private static List<MadeLive> in(ProcedurePaths paths) {
        UnitVoltage voltage = UnitVoltage.of(paths);
        boolean dangerous = voltage.isUnknown() || voltage.dangerous().isPresent() || paths.map().places().stream().filter(paths::reaches)
                .anyMatch(place -> place.isToldOf(Hazard.SHOCK, paths.map().scope()));
        Map<InlinedStep, List<Setting>> places = new LinkedHashMap<>();
        paths.bench().all().filter(state -> !open(paths, state).isEmpty() && switchesOn(paths, state) && state.next().stream().anyMatch(state::raisesVoltage))
                .forEach(state -> {
            List<Setting> open = places.computeIfAbsent(state.place(), first -> new ArrayList<>());
            open(paths, state).stream().filter(one -> open.stream().noneMatch(known -> same(known, one))).forEach(open::add);
        });
        return places.entrySet().stream().map(entry -> new MadeLive(entry.getKey(), List.copyOf(entry.getValue()),
                isTold(entry.getKey(), paths.map().scope()), dangerous)).toList();
    }

    /** Where a battery is put in, the note about batteries tells of what it makes live. */
    private static boolean isTold(InlinedStep place, Scope scope) {
        boolean battery = place.handles().stream().flatMap(name -> scope.part(name).stream()).flatMap(part -> part.hazards().stream())
                .anyMatch(hazard -> hazard.value() == Hazard.BATTERY);
        return place.isToldOf(Hazard.SHOCK, scope) || battery && place.isToldOf(Hazard.BATTERY, scope);
    }

    /** Whether the step itself does it: by what it sets, or by what that forces. */
    private static boolean switchesOn(ProcedurePaths paths, BenchStates.State state) {
        return state.place().sets().stream().anyMatch(set -> paths.bench().live().stream().anyMatch(live ->
                live.name().text().equals(set.condition().text()) && isLive(live, set.value())
                        || live.becomes().stream().anyMatch(becomes -> isLive(live, becomes.value()) && same(becomes.when(), set))));
    }

    private static boolean isLive(Condition condition, Name value) {
        return condition.live().stream().anyMatch(live -> live.text().equals(value.text()));
    }

    /** What the step does not close itself. */
    private static List<Setting> open(ProcedurePaths paths, BenchStates.State state) {
        List<Condition> closures = paths.map().conditions().stream().filter(Closures::isClosure).filter(one -> !one.values().isEmpty()).toList();
        return closures.stream().filter(one -> state.place().sets().stream().noneMatch(set -> set.condition().text().equals(one.name().text())
                && set.value().text().equals(one.ends().orElseThrow().text()))).filter(one -> !state.value(one).text().equals(one.ends().orElseThrow().text()))
                .map(one -> new Setting(one.name(), state.value(one), one.at())).toList();
    }

    private static boolean same(Setting one, Setting other) {
        return one.condition().text().equals(other.condition().text()) && one.value().text().equals(other.value().text());
    }
}

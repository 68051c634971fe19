/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.quality;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.SafetyNeed;
import org.faultwright.analysis.paths.SafetyNeeds;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Setting;

/**
 * A place at which a unit that stands open, or that is not joined as it leaves, is made live.
 *
 * @param place     the step; in a routine with the steps that perform it
 * @param open      what is not as it must be at the end, such as {@code Cover removed}
 * @param told      whether a note about shock is read at the step, or at a step that performs it
 * @param dangerous whether such a note must be read there ({@link SafetyNeeds})
 */
public record MadeLive(InlinedStep place, List<Setting> open, boolean told, boolean dangerous) {
    /** In the order of the shortest paths. */
    static List<MadeLive> of(Subject subject) {
        return ProcedurePaths.of(subject).filter(paths -> !paths.bench().live().isEmpty()).map(MadeLive::in).orElse(List.of());
    }

    private static List<MadeLive> in(ProcedurePaths paths) {
        SafetyNeeds needs = new SafetyNeeds(paths);
        Map<InlinedStep, MadeLive> places = new LinkedHashMap<>();
        paths.bench().all().forEach(state -> {
            List<Setting> open = state.openWhenMadeLive();
            if (!open.isEmpty()) {
                InlinedStep place = state.place();
                places.merge(place, new MadeLive(place, open, place.isToldOf(Hazard.SHOCK, paths.map().scope()),
                        needs.at(state).stream().anyMatch(SafetyNeed::atStep)), MadeLive::and);
            }
        });
        return List.copyOf(places.values());
    }

    /** The same place, come to in another state. */
    private MadeLive and(MadeLive other) {
        List<Setting> all = Stream.concat(open.stream(), other.open.stream().filter(one -> open.stream().noneMatch(one::says))).toList();
        return new MadeLive(place, all, told, dangerous || other.dangerous);
    }
}

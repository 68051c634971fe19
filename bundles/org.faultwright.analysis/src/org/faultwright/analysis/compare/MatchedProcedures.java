/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Written;

/**
 * Which procedure of an earlier release is which of today: by its name, and one that is called otherwise by its equipment, complaints, title and
 * steps, so that nothing that it lost is hidden by a name.
 */
public final class MatchedProcedures {
    private static final double HALF = 0.5;
    private static final double SOME = 0.3;

    private final Map<Procedure, Procedure> earlier = new IdentityHashMap<>();
    private final List<Procedure> gone;

    private MatchedProcedures(List<Procedure> then, List<Procedure> now) {
        Map<String, Procedure> byName = new HashMap<>();
        then.forEach(one -> byName.put(one.name().text(), one));
        now.forEach(one -> Optional.ofNullable(byName.get(one.name().text())).ifPresent(was -> earlier.put(one, was)));
        Set<String> here = now.stream().map(one -> one.name().text()).collect(Collectors.toSet());
        List<Procedure> left = then.stream().filter(one -> !here.contains(one.name().text())).toList();
        Set<String> taken = new HashSet<>();
        for (Procedure was : left) {
            Procedure best = null;
            double most = 0;
            for (Procedure one : now) {
                double common = earlier.containsKey(one) || taken.contains(one.name().text()) ? 0 : common(was, one);
                if (common > most) {
                    best = one;
                    most = common;
                }
            }
            if (best != null) {
                earlier.put(best, was);
                taken.add(best.name().text());
            }
        }
        this.gone = left.stream().filter(one -> !earlier.containsValue(one)).toList();
    }

    public static MatchedProcedures of(List<Procedure> then, List<Procedure> now) {
        return new MatchedProcedures(then, now);
    }

    /** What a procedure of today was; absent where it is new. */
    public Optional<Procedure> earlier(Procedure today) {
        return Optional.ofNullable(earlier.get(today));
    }

    /** Those that nobody finds today. */
    public List<Procedure> gone() {
        return gone;
    }

    /** 0 where nobody would call them one procedure. */
    private static double common(Procedure was, Procedure now) {
        double steps = Renames.share(stepNames(was), stepNames(now));
        boolean unit = was.equipment().isPresent() && was.equipment().map(one -> one.title()).equals(now.equipment().map(one -> one.title()));
        double complaints = Renames.share(complaints(was), complaints(now));
        boolean called = !was.title().isBlank() && was.title().equals(now.title());
        boolean same = steps >= HALF || unit && (steps >= SOME || complaints >= HALF || called);
        return same ? steps + complaints + (unit ? 1 : 0) + (called ? 1 : 0) : 0;
    }

    private static Set<String> stepNames(Procedure procedure) {
        return procedure.writtenSteps().stream().map(step -> step.name().text()).collect(Collectors.toSet());
    }

    private static Set<String> complaints(Procedure procedure) {
        return procedure.complaints().stream().map(Written::value).collect(Collectors.toSet());
    }
}

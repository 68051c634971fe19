/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.reference;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.analysis.reference.SmallProcedure.Kind;
import org.faultwright.analysis.reference.SmallProcedure.Step;

/**
 * The capacitor itself, whatever the text says of it: volts that only the supply puts there, that a reading at the capacitor
 * shows, that fall while a step waits and faster through a bleed lead, and that a hand may meet. A walk stops where a step asks for something that does not hold.
 */
final class RealCharge {
    private static final int[] AT_FIRST = {0, 30, 325};
    private static final int FULL = 325;
    private static final int SAFE = 60;

    private record Moment(String step, Map<String, String> bench, int volts, Map<String, Integer> taken) {
    }

    private RealCharge() {
    }

    /** A step at which hands or an ohm range meet more than 60 V at the capacitor or what is wired to it; absent where none does. */
    static Optional<String> met(SmallProcedure procedure) {
        Map<String, Step> steps = new HashMap<>();
        procedure.steps().forEach(step -> steps.put(step.name(), step));
        Deque<Moment> open = new ArrayDeque<>();
        Set<Moment> known = new HashSet<>();
        if (procedure.steps().isEmpty()) {
            return Optional.empty();
        }
        for (int volts : AT_FIRST) {
            open.add(new Moment(procedure.steps().get(0).name(), new TreeMap<>(Map.of("Supply", "off", "Cover", "fitted", "Plug", "in")), volts, Map.of()));
        }
        while (!open.isEmpty()) {
            Moment now = open.remove();
            Step step = steps.get(now.step());
            if (!known.add(now) || step == null || !mayGoOn(step, now)) {
                continue;
            }
            if (now.volts() > SAFE && touches(step, now.bench())) {
                return Optional.of(step.name());
            }
            go(procedure.store(), step, now, open);
        }
        return Optional.empty();
    }

    /** What a step asks of the charge is looked up on paper, not in the unit. */
    private static boolean mayGoOn(Step step, Moment now) {
        return step.needs().entrySet().stream().filter(need -> !need.getKey().equals("Charge"))
                .allMatch(need -> now.bench().get(need.getKey()).equals(need.getValue()));
    }

    private static boolean touches(Step step, Map<String, String> bench) {
        boolean drawn = bench.get("Plug").equals("drawn");
        boolean ohms = step.kind() == Kind.OHMS && (step.point().equals("Bulk") || step.point().equals("Out") && !drawn);
        boolean board = step.handles().contains("Board") && bench.get("Cover").equals("removed");
        return ohms || step.handles().contains("Bank") || board;
    }

    /** V(t) = V0 e^(-t/RC), rounded up; what drains the capacitor, the lead of 1 kohm among it where it is held there. Nothing falls under power. */
    private static int after(SmallProcedure.Store store, Step step, int volts) {
        double siemens = (store.kilohms() > 0 ? 1 / (store.kilohms() * 1e3) : 0) + (step.handles().contains("Lead") ? 1 / 1e3 : 0);
        return store.nanofarads() == 0 || step.seconds() == 0 ? volts : (int) Math.ceil(volts * Math.exp(-step.seconds() * siemens / (store.nanofarads() * 1e-9)));
    }

    private static void go(SmallProcedure.Store store, Step step, Moment now, Deque<Moment> open) {
        for (int i = 0; i < step.to().size(); i++) {
            boolean atCapacitor = step.kind() == Kind.VOLTS && step.point().equals("Bulk");
            if (atCapacitor && (now.volts() <= step.split()) != (i == 0)) {
                continue;
            }
            Map<String, String> bench = new TreeMap<>(now.bench());
            step.sets().forEach((condition, value) -> bench.put(condition, value));
            int volts = bench.get("Supply").equals("on") ? FULL : now.bench().get("Supply").equals("on") ? now.volts()
                    : after(store, step, now.volts());
            boolean bounded = step.atMost() > 0 && i == step.to().size() - 1;
            boolean spent = bounded && now.taken().getOrDefault(step.name(), 0) >= step.atMost();
            Map<String, Integer> taken = new TreeMap<>(now.taken());
            if (bounded && !spent) {
                taken.merge(step.name(), 1, Integer::sum);
            }
            open.add(new Moment(spent ? SmallProcedure.END : step.to().get(i), bench, volts, taken));
        }
    }
}

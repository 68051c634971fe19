/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.reference;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.faultwright.analysis.reference.SmallProcedure.Kind;
import org.faultwright.analysis.reference.SmallProcedure.Step;

/**
 * Walks a small procedure as a careful person would: with a finger on the text, a slip that says how the bench stands, and the
 * notes read so far. Written from the help pages alone, and with nothing of the analysis in it: no packed states, no map of
 * places, no shortest paths. What it meets is told as "rule step".
 */
final class ReferenceBench {
    private static final int HARMLESS_VOLTS = 60;
    private final SmallProcedure procedure;
    private final Map<String, Step> steps = new HashMap<>();
    private final Set<String> met = new TreeSet<>();
    private final Set<String> readAnywhere = new HashSet<>();

    private ReferenceBench(SmallProcedure procedure) {
        this.procedure = procedure;
        procedure.steps().forEach(step -> steps.put(step.name(), step));
    }

    /** The slip: where the finger is, how the bench stands, the notes that count, how often each bounded arrow was taken. */
    private record Slip(String step, Map<String, String> bench, Set<String> told, Map<String, Integer> taken) {
    }

    static Set<String> hazards(SmallProcedure procedure) {
        return new ReferenceBench(procedure).walk();
    }

    private Set<String> walk() {
        Map<String, String> start = new TreeMap<>(Map.of("Supply", "off", "Charge", "present", "Cover", "fitted", "Plug", "in"));
        Deque<Slip> open = new ArrayDeque<>();
        Set<Slip> known = new HashSet<>();
        if (!procedure.steps().isEmpty()) {
            open.add(new Slip(procedure.steps().get(0).name(), start, Set.of(), Map.of()));
        }
        Map<String, Set<String>> untold = new TreeMap<>(Map.of("shock", new TreeSet<>(), "charge", new TreeSet<>()));
        while (!open.isEmpty()) {
            Slip slip = open.remove();
            if (!known.add(slip)) {
                continue;
            }
            if (!steps.containsKey(slip.step())) {
                lookAtCharge(slip.bench());
                continue;
            }
            follow(slip, untold).forEach(open::add);
        }
        untold.forEach((hazard, at) -> {
            if (!at.isEmpty() && !readAnywhere.contains(hazard)) {
                met.add("note-never-read " + hazard);
            } else {
                at.forEach(step -> met.add("note-after-need " + step + " " + hazard));
            }
        });
        return met;
    }

    private List<Slip> follow(Slip slip, Map<String, Set<String>> untold) {
        Step step = steps.get(slip.step());
        Map<String, String> bench = new TreeMap<>(slip.bench());
        step.needs().forEach((condition, value) -> {
            if (!bench.get(condition).equals(value)) {
                met.add("need-not-established " + step.name());
            }
        });
        put(bench, step.needs());
        look(step, bench);
        lookAtWait(step, bench);
        Set<String> told = new HashSet<>(slip.told());
        told.addAll(covered(step));
        readAnywhere.addAll(covered(step));
        for (String hazard : asked(step, bench)) {
            if (told.add(hazard)) {
                untold.get(hazard).add(step.name());
            }
        }
        Map<String, String> after = new TreeMap<>(bench);
        put(after, step.sets());
        if (!isClosed(after) && isLive(after) && !isLive(bench) && !covered(step).contains("shock")) {
            told.add("shock");
            untold.get("shock").add(step.name());
        }
        List<Slip> next = new java.util.ArrayList<>();
        for (int i = 0; i < step.to().size(); i++) {
            Map<String, String> then = new TreeMap<>(after);
            if (step.proves() == i) {
                put(then, Map.of("Charge", "absent"));
            }
            Set<String> counts = new HashSet<>(told);
            boolean raisedVoltage = isLive(then) && !isLive(bench);
            boolean raisedCharge = isCharged(then) && !isCharged(bench);
            if (raisedVoltage || raisedCharge) {
                lapse("shock", step, counts);
            }
            if (raisedCharge) {
                lapse("charge", step, counts);
            }
            boolean bounded = step.atMost() > 0 && i == step.to().size() - 1;
            boolean spent = bounded && slip.taken().getOrDefault(step.name(), 0) >= step.atMost();
            Map<String, Integer> taken = new TreeMap<>(slip.taken());
            if (bounded && !spent) {
                taken.merge(step.name(), 1, Integer::sum);
            }
            next.add(new Slip(spent ? SmallProcedure.END : step.to().get(i), then, counts, taken));
        }
        return next;
    }

    /**
     * IEC 60335-1 8.1.4 as the help tells it: 325 V on more than 0.1 uF may not be touched. A wait that tells of charge, opens the unit or comes before
     * the reading that proves must let it fall to 60 V, and a bleed lead must be held as long.
     */
    private void lookAtWait(Step step, Map<String, String> bench) {
        SmallProcedure.Store store = procedure.store();
        if (store.nanofarads() <= 100 || step.seconds() == 0) {
            return;
        }
        boolean bleeds = step.handles().contains("Lead");
        double siemens = (store.kilohms() > 0 ? 1 / (store.kilohms() * 1e3) : 0) + (bleeds ? 1 / 1e3 : 0);
        if (325 * Math.exp(-step.seconds() * siemens / (store.nanofarads() * 1e-9)) <= HARMLESS_VOLTS) {
            return;
        }
        boolean staysLive = isLive(bench) && !"off".equals(step.sets().get("Supply"));
        if (bleeds) {
            met.add("bleed-lead-unfit " + step.name());
        } else if (isCharged(bench) && !staysLive && (step.notes().contains("Stored") || opens(step) || proofFollows(step))) {
            met.add("wait-too-short " + step.name());
        }
    }

    private static boolean opens(Step step) {
        return "removed".equals(step.sets().get("Cover")) || "drawn".equals(step.sets().get("Plug"));
    }

    /** Whether a reading that proves comes behind this wait and before the next one. */
    private boolean proofFollows(Step from) {
        Deque<String> open = new ArrayDeque<>(from.to());
        Set<String> known = new HashSet<>();
        while (!open.isEmpty()) {
            Step step = steps.get(open.remove());
            if (step == null || !known.add(step.name()) || step.seconds() > 0) {
                continue;
            }
            if (step.kind() != Kind.CHECK && step.kind() != Kind.DO && step.proves() >= 0) {
                return true;
            }
            open.addAll(step.to());
        }
        return false;
    }

    /** A charge follows its supply wherever the procedure says so. */
    private void put(Map<String, String> bench, Map<String, String> settings) {
        bench.putAll(settings);
        if (procedure.returns() && isLive(bench) && !settings.isEmpty()) {
            bench.put("Charge", "present");
        }
    }

    private static void lapse(String hazard, Step step, Set<String> told) {
        if (!covered(step).contains(hazard)) {
            told.remove(hazard);
        }
    }

    private static boolean isLive(Map<String, String> bench) {
        return bench.get("Supply").equals("on");
    }

    private static boolean isClosed(Map<String, String> bench) {
        return bench.get("Cover").equals("fitted") && bench.get("Plug").equals("in");
    }

    private static boolean isCharged(Map<String, String> bench) {
        return bench.get("Charge").equals("present");
    }

    private static Set<String> covered(Step step) {
        Set<String> covered = new HashSet<>();
        if (!step.notes().isEmpty()) {
            covered.add("shock");
        }
        if (step.notes().contains("Stored")) {
            covered.add("charge");
        }
        return covered;
    }

    private void look(Step step, Map<String, String> bench) {
        boolean live = isLive(bench);
        boolean staysLive = live && !"off".equals(step.sets().get("Supply"));
        boolean closed = isClosed(bench);
        if (staysLive && !step.live() && (handlesLive(step, bench, closed) || moves(step, bench) || works(step) && !closed)) {
            met.add("live-work " + step.name());
        }
        if (step.kind() == Kind.OHMS && live && !isCutOff(step.point(), bench)) {
            met.add("live-measurement " + step.name());
        }
        boolean inside = !closed && !staysLive && !moves(step, bench);
        if (isCharged(bench) && (step.kind() == Kind.OHMS && (step.point().equals("Bulk") || !isCutOff(step.point(), bench))
                || handlesCharged(step, bench, inside && (step.repairs() || !drains(step))) || inside && works(step) && step.handles().isEmpty()
                        && !(covered(step).contains("charge") && (step.kind() == Kind.CHECK || !step.repairs() && drains(step))))) {
            met.add("charge-not-proved-absent " + step.name());
        }
        lookAtCharge(bench);
    }

    private void lookAtCharge(Map<String, String> bench) {
        if (!procedure.returns() && isLive(bench) && !isCharged(bench)) {
            met.add("charge-never-returns");
        }
    }

    private static boolean handlesLive(Step step, Map<String, String> bench, boolean closed) {
        return inHand(step).stream().anyMatch(part -> !isCutOff(part, bench) && (!closed || part.equals("Bank")));
    }

    private static boolean moves(Step step, Map<String, String> bench) {
        return step.sets().entrySet().stream().filter(one -> one.getKey().equals("Cover") || one.getKey().equals("Plug"))
                .anyMatch(one -> !bench.get(one.getKey()).equals(one.getValue()));
    }

    private static boolean works(Step step) {
        return step.kind() == Kind.DO && (step.repairs() || step.tool()) || step.kind() == Kind.CHECK && step.tool();
    }

    /** Whether a reading that proves follows at once. */
    private boolean drains(Step step) {
        return step.to().stream().map(steps::get).allMatch(next -> next != null && next.kind() != Kind.CHECK && next.kind() != Kind.DO && next.proves() >= 0);
    }

    /** Where the unit is open already, 325 V may stand on whatever is touched: to be told of it is not enough. */
    private static boolean handlesCharged(Step step, Map<String, String> bench, boolean inside) {
        boolean told = covered(step).contains("charge");
        return inHand(step).stream().filter(part -> !isCutOff(part, bench))
                .anyMatch(part -> !told || !part.equals("Lead") && (step.repairs() || inside || part.equals("Bank")));
    }

    /** Parts touched inside: where the step says that the unit is closed, only those that are dangerous themselves. */
    private static List<String> inHand(Step step) {
        String cover = step.needs().getOrDefault("Cover", "");
        String plug = step.needs().getOrDefault("Plug", "");
        boolean saysClosed = cover.equals("fitted") && !plug.equals("drawn") || plug.equals("in") && !cover.equals("removed");
        return step.handles().stream().filter(part -> !saysClosed || part.equals("Bank")).toList();
    }

    private static boolean isCutOff(String thing, Map<String, String> bench) {
        return thing.equals("Fuse") || (thing.equals("Out") || thing.equals("Tip")) && bench.get("Plug").equals("drawn");
    }

    private static Set<String> asked(Step step, Map<String, String> bench) {
        Set<String> asked = new HashSet<>();
        boolean reads = step.kind() == Kind.OHMS || step.kind() == Kind.VOLTS || step.kind() == Kind.AC;
        boolean energised = isLive(bench) || isCharged(bench);
        boolean reached = reads && (step.point().equals("Bulk") || !isCutOff(step.point(), bench));
        if (step.live()) {
            asked.add("shock");
        }
        boolean high = step.point().equals("Bulk") || step.kind() != Kind.OHMS && step.split() > (step.kind() == Kind.AC ? 30 : HARMLESS_VOLTS);
        if (reached && energised && high) {
            asked.add("shock");
        }
        if (reads && step.point().equals("Bulk") || step.handles().contains("Bank")) {
            asked.add("charge");
        }
        boolean touches = reached && (step.kind() == Kind.OHMS || !step.point().equals("Out"))
                || inHand(step).stream().anyMatch(part -> !isCutOff(part, bench));
        if (touches && isCharged(bench)) {
            asked.add("charge");
        }
        return asked;
    }
}

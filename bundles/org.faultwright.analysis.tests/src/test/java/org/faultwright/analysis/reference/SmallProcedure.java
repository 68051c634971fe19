/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A small procedure on a bench with one supply, one charge, a cover and a plug, as plain data and as text.
 *
 * @param returns whether the text says that the charge comes back with the supply
 * @param store   what its capacitor stores, and what drains it
 */
public record SmallProcedure(boolean returns, Store store, List<Step> steps) {
    static final String END = "End";

    /** @param nanofarads 0 where the text does not say it @param kilohms 0 where nothing drains it */
    public record Store(int nanofarads, int kilohms) {
        private String text() {
            return nanofarads == 0 ? "" : " stores " + nanofarads + " nF" + (kilohms == 0 ? "" : " drained by " + kilohms + " kohm");
        }
    }

    public enum Kind {
        CHECK, DO, OHMS, VOLTS, AC
    }

    /**
     * @param needs  condition to value; so for sets
     * @param split  where the two bands of a reading meet, in volts or ohms
     * @param proves which of the outcomes says that the charge is absent: 0, 1, or -1 for none
     * @param to     where each outcome leads
     * @param seconds how long it waits; 0 where it does not
     * @param atMost how often the last outcome may be taken before it leads to the end; 0 where it has no bound
     */
    public record Step(String name, Kind kind, String point, Map<String, String> needs, Map<String, String> sets, List<String> notes,
            List<String> handles, boolean live, boolean tool, boolean repairs, int split, int proves, List<String> to, int atMost, int seconds) {

        List<String> results() {
            return switch (kind) {
                case CHECK -> List.of("yes", "no");
                case DO -> List.of("then");
                case OHMS -> List.of("under " + split + " ohm", "at least " + split + " ohm");
                case VOLTS, AC -> List.of("at most " + split + " V", "over " + split + " V");
            };
        }

        private String text() {
            StringBuilder text = new StringBuilder(word() + " " + name + " \"" + name + "\" {");
            switch (kind) {
                case OHMS -> text.append(" resistance at ").append(point);
                case VOLTS -> text.append(" dc voltage at ").append(point);
                case AC -> text.append(" ac voltage rms at ").append(point);
                default -> {
                }
            }
            Map<String, String> others = new TreeMap<>(needs);
            if ("removed".equals(needs.get("Cover")) && "absent".equals(needs.get("Charge"))) {
                text.append(" unit dead");
                others.remove("Cover");
                others.remove("Charge");
            }
            settings(text, "needs", others);
            settings(text, "sets", sets);
            list(text, "notes", notes);
            list(text, "handles", handles);
            text.append(live ? " live because \"it shows only while it runs\"" : "");
            text.append(tool ? " tools \"insulated stick\" rated 1000 V" : "").append(repairs ? " repairs" : "");
            text.append(seconds > 0 ? " wait " + seconds + " s" : "");
            for (int i = 0; i < results().size(); i++) {
                boolean bounded = atMost > 0 && i == results().size() - 1;
                text.append("\n    ").append(results().get(i)).append(" -> ").append(to.get(i))
                        .append(bounded ? " at most " + atMost + " times, else " + END : "")
                        .append(proves == i ? " proves Charge absent" : "");
            }
            return text.append("\n}\n").toString();
        }

        private String word() {
            return kind == Kind.CHECK ? "check" : kind == Kind.DO ? "do" : "measure";
        }

        private static void settings(StringBuilder text, String word, Map<String, String> settings) {
            if (!settings.isEmpty()) {
                text.append(' ').append(word).append(' ').append(new TreeMap<>(settings).entrySet().stream()
                        .map(one -> one.getKey() + " " + one.getValue()).collect(Collectors.joining(", ")));
            }
        }

        private static void list(StringBuilder text, String word, List<String> names) {
            text.append(names.isEmpty() ? "" : " " + word + " " + String.join(", ", names));
        }
    }

    public String text() {
        return """
                procedure Small "Small"
                condition Supply { off, on } live when on
                condition Charge { present, absent } charged when present proved at Bulk at most 60 V%s
                condition Cover { fitted, removed } ends fitted
                condition Plug { in, drawn } ends in
                setup dead "Open, proved dead" { Cover removed, Charge absent }
                point Bulk "C1" carries up to 325 V dc hazards charge%s
                point Out "Output, behind the plug" carries up to 12 V dc isolated when Plug drawn
                point Fuse "F1, drawn" isolated
                part Board "Board"
                part Bank "Bank" hazards charge
                part Tip "Tip, behind the plug" isolated when Plug drawn
                part Lead "Bleed lead" drains by 1 kohm rated 50 W
                note Shock danger { covers shock hazard "h" consequence "c" avoid "a" }
                note Stored danger { covers charge, shock hazard "h" consequence "c" avoid "a" }
                begin at %s
                """.formatted(returns ? " becomes present when Supply on" : "", store.text(), steps.isEmpty() ? END : steps.get(0).name())
                + steps.stream().map(Step::text).collect(Collectors.joining())
                // every second one ends at what follows from a fault
                + (steps.size() % 2 == 0 ? "conclude End \"End\" { refers to \"the bench\" }\n" : "fault End \"End\" { report \"It ends.\" }\n");
    }

    /** All that is one change smaller: a step passed over, or one thing less said at a step. */
    List<SmallProcedure> smaller() {
        List<SmallProcedure> all = new ArrayList<>();
        if (store.nanofarads() > 0) {
            all.add(new SmallProcedure(returns, new Store(0, 0), steps));
        }
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            all.add(without(i));
            for (Step less : less(step)) {
                List<Step> changed = new ArrayList<>(steps);
                changed.set(i, less);
                all.add(new SmallProcedure(returns, store, changed));
            }
        }
        return all;
    }

    private SmallProcedure without(int index) {
        Step gone = steps.get(index);
        String next = gone.to().get(0).equals(gone.name()) ? END : gone.to().get(0);
        List<Step> left = new ArrayList<>();
        for (Step step : steps) {
            if (step != gone) {
                left.add(with(step, step.needs(), step.sets(), step.notes(), step.handles(), step.live(), step.tool(), step.repairs(),
                        step.proves(), step.to().stream().map(to -> to.equals(gone.name()) ? next : to).toList(), step.atMost()));
            }
        }
        return new SmallProcedure(returns, store, left);
    }

    private static List<Step> less(Step s) {
        List<Step> all = new ArrayList<>();
        s.needs().keySet().forEach(key -> all.add(with(s, minus(s.needs(), key), s.sets(), s.notes(), s.handles(), s.live(), s.tool(), s.repairs(), s.proves(), s.to(), s.atMost())));
        s.sets().keySet().forEach(key -> all.add(with(s, s.needs(), minus(s.sets(), key), s.notes(), s.handles(), s.live(), s.tool(), s.repairs(), s.proves(), s.to(), s.atMost())));
        s.notes().forEach(note -> all.add(with(s, s.needs(), s.sets(), minus(s.notes(), note), s.handles(), s.live(), s.tool(), s.repairs(), s.proves(), s.to(), s.atMost())));
        s.handles().forEach(part -> all.add(with(s, s.needs(), s.sets(), s.notes(), minus(s.handles(), part), s.live(), s.tool(), s.repairs(), s.proves(), s.to(), s.atMost())));
        if (s.live() || s.tool() || s.repairs() || s.proves() >= 0 || s.atMost() > 0) {
            all.add(with(s, s.needs(), s.sets(), s.notes(), s.handles(), false, s.tool(), s.repairs(), s.proves(), s.to(), s.atMost()));
            all.add(with(s, s.needs(), s.sets(), s.notes(), s.handles(), s.live(), false, s.repairs(), s.proves(), s.to(), s.atMost()));
            all.add(with(s, s.needs(), s.sets(), s.notes(), s.handles(), s.live(), s.tool(), false, s.proves(), s.to(), s.atMost()));
            all.add(with(s, s.needs(), s.sets(), s.notes(), s.handles(), s.live(), s.tool(), s.repairs(), -1, s.to(), s.atMost()));
            all.add(with(s, s.needs(), s.sets(), s.notes(), s.handles(), s.live(), s.tool(), s.repairs(), s.proves(), s.to(), 0));
        }
        if (s.to().stream().anyMatch(to -> !to.equals(END))) {
            for (int i = 0; i < s.to().size(); i++) {
                List<String> to = new ArrayList<>(s.to());
                to.set(i, END);
                all.add(with(s, s.needs(), s.sets(), s.notes(), s.handles(), s.live(), s.tool(), s.repairs(), s.proves(), to, s.atMost()));
            }
        }
        if (s.seconds() > 0) {
            all.add(new Step(s.name(), s.kind(), s.point(), s.needs(), s.sets(), s.notes(), s.handles(), s.live(), s.tool(), s.repairs(), s.split(), s.proves(),
                    s.to(), s.atMost(), 0));
        }
        all.removeIf(s::equals);
        return all;
    }

    private static Step with(Step s, Map<String, String> needs, Map<String, String> sets, List<String> notes, List<String> handles,
            boolean live, boolean tool, boolean repairs, int proves, List<String> to, int atMost) {
        return new Step(s.name(), s.kind(), s.point(), needs, sets, notes, handles, live, tool, repairs, s.split(), proves, to, atMost, s.seconds());
    }

    private static Map<String, String> minus(Map<String, String> settings, String key) {
        Map<String, String> left = new TreeMap<>(settings);
        left.remove(key);
        return left;
    }

    private static List<String> minus(List<String> names, String one) {
        return names.stream().filter(name -> !name.equals(one)).toList();
    }
}

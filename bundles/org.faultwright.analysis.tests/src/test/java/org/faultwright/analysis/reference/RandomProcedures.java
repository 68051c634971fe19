/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.faultwright.analysis.reference.SmallProcedure.Kind;
import org.faultwright.analysis.reference.SmallProcedure.Step;

/** Small procedures at random, the same for the same seed. Most lead forward; one arrow at most leads back. */
public final class RandomProcedures {
    private static final Map<String, List<String>> VALUES = new TreeMap<>(Map.of("Supply", List.of("off", "on"),
            "Cover", List.of("fitted", "removed"), "Plug", List.of("in", "drawn")));
    private final Random random;

    public RandomProcedures(long seed) {
        this.random = new Random(seed);
    }

    public SmallProcedure next() {
        int count = 2 + random.nextInt(6);
        int back = random.nextInt(3) == 0 ? random.nextInt(count) : -1;
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            steps.add(step(i, count, i == back));
        }
        if (count > 2 && random.nextInt(3) == 0) {
            bleed(steps, random.nextInt(count - 1));
        }
        return new SmallProcedure(random.nextInt(4) > 0, store(), steps);
    }

    /** Makes two steps into one that holds the bleed lead and one that reads what is left, going back while there is too much. */
    private void bleed(List<Step> steps, int at) {
        Step hold = steps.get(at);
        Step read = steps.get(at + 1);
        int seconds = List.of(0, 2, 20, 90).get(of(1, 3, 3, 1));
        steps.set(at, new Step(hold.name(), Kind.DO, hold.point(), hold.needs(), hold.sets(), random.nextInt(3) > 0 ? List.of("Stored") : hold.notes(),
                List.of("Lead"), false, false, false, 0, -1, List.of(read.name()), 0, seconds));
        boolean again = random.nextBoolean();
        String on = at + 2 < steps.size() ? steps.get(at + 2).name() : SmallProcedure.END;
        steps.set(at + 1, new Step(read.name(), Kind.VOLTS, "Bulk", read.needs(), Map.of(), read.notes(), List.of(), false, false, false, 50,
                random.nextInt(4) > 0 ? 0 : 1, List.of(on, again ? hold.name() : SmallProcedure.END), again ? 1 + random.nextInt(2) : 0, read.seconds()));
    }

    /** From what nobody feels to a flash bank that takes hours. */
    private SmallProcedure.Store store() {
        int nanofarads = List.of(0, 50, 1_000, 47_000, 470_000, 4_700_000).get(of(2, 1, 1, 3, 2, 2));
        return new SmallProcedure.Store(nanofarads, nanofarads == 0 ? 0 : List.of(0, 10, 47, 220, 2_200).get(of(1, 2, 2, 2, 1)));
    }

    private Step step(int number, int count, boolean back) {
        Kind kind = Kind.values()[of(3, 5, 3, 4, 1)];
        boolean reads = kind == Kind.OHMS || kind == Kind.VOLTS || kind == Kind.AC;
        boolean hands = kind == Kind.DO || kind == Kind.CHECK;
        String point = List.of("Bulk", "Out", "Fuse").get(of(4, 2, 1));
        int proves = kind == Kind.VOLTS || kind == Kind.AC || kind == Kind.CHECK ? of(3, 4, 1) - 1 : -1;
        List<String> to = new ArrayList<>();
        for (int i = 0; i < (kind == Kind.DO ? 1 : 2); i++) {
            to.add(number + 1 >= count || random.nextInt(7) == 0 ? SmallProcedure.END : name(number + 1 + random.nextInt(Math.min(2, count - number - 1))));
        }
        if (back) {
            to.set(to.size() - 1, name(random.nextInt(number + 1)));
        }
        int atMost = back && random.nextBoolean() ? 1 + random.nextInt(2) : 0;
        Map<String, String> needs = new TreeMap<>();
        if (random.nextInt(3) == 0) {
            setting(needs);
        }
        if (random.nextInt(9) == 0 && !"on".equals(needs.get("Supply"))) {
            needs.put("Charge", "absent");
        }
        Map<String, String> sets = new TreeMap<>();
        for (int i = 0; kind == Kind.DO && i < of(1, 3, 1); i++) {
            setting(sets);
        }
        return new Step(name(number), kind, point, needs, sets, some(List.of("Shock", "Stored"), 4),
                hands ? some(List.of("Board", "Bank", "Tip", "Lead"), 6) : List.of(), random.nextInt(6) == 0, hands && random.nextInt(4) == 0,
                kind == Kind.DO && random.nextInt(4) == 0, reads ? List.of(5, 50, 200).get(of(4, 2, 1)) : 0, proves, to, atMost,
                List.of(0, 2, 20, 90, 600).get(of(kind == Kind.DO ? 5 : 20, 1, 2, 2, 1)));
    }

    private static String name(int number) {
        return "S" + number;
    }

    private void setting(Map<String, String> into) {
        String condition = List.copyOf(VALUES.keySet()).get(random.nextInt(VALUES.size()));
        into.put(condition, VALUES.get(condition).get(random.nextInt(2)));
    }

    private List<String> some(List<String> names, int oneIn) {
        return names.stream().filter(name -> random.nextInt(oneIn) == 0).toList();
    }

    /** A number from 0, with these weights. */
    private int of(int... weights) {
        int sum = 0;
        for (int weight : weights) {
            sum += weight;
        }
        int at = random.nextInt(sum);
        int number = 0;
        while (at >= weights[number]) {
            at -= weights[number++];
        }
        return number;
    }
}

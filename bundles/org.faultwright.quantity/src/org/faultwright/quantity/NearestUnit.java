/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Which unit somebody meant who wrote one that there is not. */
final class NearestUnit {
    private static final Map<String, String> NAMES = Map.ofEntries(Map.entry("volt", "V"), Map.entry("ampere", "A"),
            Map.entry("amp", "A"), Map.entry("watt", "W"), Map.entry("farad", "F"), Map.entry("henry", "H"),
            Map.entry("hertz", "Hz"), Map.entry("cps", "Hz"), Map.entry("ohm", "ohm"), Map.entry("siemen", "S"),
            Map.entry("mho", "S"), Map.entry("joule", "J"), Map.entry("newton", "N"), Map.entry("pascal", "Pa"),
            Map.entry("second", "s"), Map.entry("sec", "s"), Map.entry("minute", "min"), Map.entry("hour", "h"),
            Map.entry("hr", "h"), Map.entry("day", "d"), Map.entry("celsiu", "degC"), Map.entry("fahrenheit", "degF"),
            Map.entry("kelvin", "K"), Map.entry("degree", "deg"), Map.entry("inch", "in"), Map.entry("inche", "in"),
            Map.entry("gram", "g"), Map.entry("metre", "m"), Map.entry("meter", "m"), Map.entry("litre", "L"),
            Map.entry("liter", "L"), Map.entry("pct", "%"), Map.entry("cnt", "counts"), Map.entry("vac", "V"),
            Map.entry("vdc", "V"), Map.entry("adc", "A"), Map.entry("aac", "A"), Map.entry("nm", "N.m"));

    private NearestUnit() {
    }

    static Optional<String> among(List<Unit> units, String written) {
        String plain = UnitSpelling.plain(written);
        if (plain.isEmpty() || plain.length() > 20) {
            return Optional.empty();
        }
        List<String> spellings = units.stream().map(Units::spelling).toList();
        return spellings.stream().filter(plain::equalsIgnoreCase)
                .min(Comparator.comparing(spelling -> lettersInOtherCase(spelling, plain)))
                .or(() -> byName(plain).filter(spellings::contains))
                .or(() -> closest(spellings, plain));
    }

    private static long lettersInOtherCase(String spelling, String plain) {
        return IntStream.range(0, plain.length()).filter(i -> spelling.charAt(i) != plain.charAt(i)).count();
    }

    private static Optional<String> byName(String plain) {
        String lower = plain.toLowerCase(Locale.ROOT);
        String name = lower.endsWith("s") ? lower.substring(0, lower.length() - 1) : lower;
        return Optional.ofNullable(NAMES.get(name));
    }

    private static Optional<String> closest(List<String> spellings, String plain) {
        int allowed = plain.length() <= 2 ? 0 : plain.length() <= 4 ? 1 : 2;
        String best = null;
        int least = allowed + 1;
        for (String spelling : spellings) {
            int distance = distance(spelling, plain);
            if (distance < least && distance < spelling.length()) {
                least = distance;
                best = spelling;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Letters to put in, take out, change or swap (optimal string alignment); case does not count. */
    static int distance(String one, String other) {
        int[][] cost = new int[one.length() + 1][other.length() + 1];
        for (int i = 0; i <= one.length(); i++) {
            for (int j = 0; j <= other.length(); j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = i + j;
                    continue;
                }
                int change = same(one, i, other, j) ? 0 : 1;
                cost[i][j] = Math.min(cost[i - 1][j - 1] + change, 1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
                if (i > 1 && j > 1 && same(one, i, other, j - 1) && same(one, i - 1, other, j)) {
                    cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
                }
            }
        }
        return cost[one.length()][other.length()];
    }

    private static boolean same(String one, int i, String other, int j) {
        return Character.toLowerCase(one.charAt(i - 1)) == Character.toLowerCase(other.charAt(j - 1));
    }
}

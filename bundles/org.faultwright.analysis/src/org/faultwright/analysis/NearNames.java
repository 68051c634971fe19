/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Proposes known names for one that nobody declared. */
public final class NearNames {
    private static final int MOST = 3;

    private record Candidate(String name, int distance) {
    }

    private NearNames() {
    }

    /** The names that a slip of the keys, a wrong case or a cut end could have meant, nearest first; at most three. */
    public static List<String> of(String written, Collection<String> names) {
        int allowed = Math.max(1, written.length() / 3);
        return names.stream().distinct().filter(name -> !name.equals(written))
                .map(name -> new Candidate(name, distance(written, name, allowed)))
                .filter(candidate -> candidate.distance() <= allowed)
                .sorted(Comparator.comparingInt(Candidate::distance).thenComparing(Candidate::name))
                .limit(MOST).map(Candidate::name).toList();
    }

    private static int distance(String written, String name, int allowed) {
        String a = written.toLowerCase(Locale.ROOT);
        String b = name.toLowerCase(Locale.ROOT);
        if (a.equals(b)) {
            return 0;
        }
        if (a.length() >= 3 && b.startsWith(a)) {
            return 1;
        }
        return Math.abs(a.length() - b.length()) > allowed ? allowed + 1 : slips(a, b);
    }

    /** Letters changed, left out, added, or swapped with their neighbour (optimal string alignment distance). */
    static int slips(String a, String b) {
        int[] twoBack = new int[b.length() + 1];
        int[] back = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] free = twoBack;
            twoBack = back;
            back = row;
            row = free;
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int changed = back[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(changed, 1 + Math.min(back[j], row[j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], twoBack[j - 2] + 1);
                }
            }
        }
        return row[b.length()];
    }
}

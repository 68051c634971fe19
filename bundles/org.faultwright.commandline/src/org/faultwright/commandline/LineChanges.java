/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.util.ArrayList;
import java.util.List;

/** What one change of a text does to its lines. */
final class LineChanges {
    private LineChanges() {
    }

    /** The lines from the first that differs to the last: those that go with {@code -}, those that come with {@code +}. */
    static List<String> between(String before, String after) {
        List<String> old = before.lines().toList();
        List<String> fresh = after.lines().toList();
        int shorter = Math.min(old.size(), fresh.size());
        int first = 0;
        while (first < shorter && old.get(first).equals(fresh.get(first))) {
            first++;
        }
        int same = 0;
        while (same < shorter - first && old.get(old.size() - 1 - same).equals(fresh.get(fresh.size() - 1 - same))) {
            same++;
        }
        List<String> changes = new ArrayList<>();
        old.subList(first, old.size() - same).forEach(line -> changes.add("  - " + line));
        fresh.subList(first, fresh.size() - same).forEach(line -> changes.add("  + " + line));
        return changes;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The findings that an example text says it has: a comment {@code // ^ rule-id} under the words. */
public record Marks(List<Place> places) {
    private static final Pattern MARK = Pattern.compile("\\s*//\\s*\\^\\s*([a-z0-9-]+)\\s*");

    /** Where a finding begins; line and column from 1. */
    record Place(int line, int column, String rule) {
        @Override
        public String toString() {
            return line + ":" + column + " " + rule;
        }
    }

    public static Marks in(String text) {
        List<Place> places = new ArrayList<>();
        String[] lines = text.split("\n", -1);
        int marked = 0;
        for (int i = 0; i < lines.length; i++) {
            Matcher mark = MARK.matcher(lines[i]);
            if (mark.matches()) {
                places.add(new Place(marked, lines[i].indexOf('^') + 1, mark.group(1)));
            } else {
                marked = i + 1;
            }
        }
        return new Marks(places);
    }

    public static List<String> of(Collection<Finding> findings) {
        return findings.stream().map(finding -> new Place(finding.at().line(), finding.at().column(), finding.rule()))
                .map(Place::toString).sorted().toList();
    }

    public List<String> sorted() {
        return places.stream().map(Place::toString).sorted().toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;

/** What a reader with two minutes should look at, one sentence each, the gravest first. */
final class Attention {
    private Attention() {
    }

    static List<String> to(Line line) {
        List<String> points = new ArrayList<>();
        QaSummary summary = line.summary();
        errors(line, points);
        line.since().filter(SinceRelease::hidesAChange)
                .filter(since -> line.publication().status() == Revision.Status.RELEASED).ifPresent(since -> points.add(
                        "It says released, has changed since the last release, and has the same revision number."));
        List<String> missed = summary.faults().stream().filter(fault -> !fault.isFound())
                .map(fault -> title(fault.fault())).toList();
        if (!missed.isEmpty()) {
            points.add("Its steps do not lead to " + String.join(", ", missed) + ".");
        }
        if (summary.examples().some() < summary.examples().all()) {
            points.add("Of its examples only " + summary.examples() + " go as they say.");
        }
        untried(summary, points);
        summary.groups().stream().filter(group -> !group.acknowledged())
                .forEach(group -> points.add("Nothing tells apart: " + names(group) + "."));
        if (summary.limits().some() < summary.limits().all()) {
            points.add("A source is named for " + summary.limits() + " limits.");
        }
        if (summary.paths().isPresent() && summary.times().worst().isEmpty()) {
            points.add("Nothing bounds the time that it can take.");
        }
        if (summary.untimed() > 0) {
            points.add(summary.untimed() == 1 ? "1 step states no time." : summary.untimed() + " steps state no time.");
        }
        return List.copyOf(points);
    }

    private static void errors(Line line, List<String> points) {
        List<Finding> errors = line.publication().errors();
        if (!errors.isEmpty()) {
            points.add((errors.size() == 1 ? "1 error" : errors.size() + " errors") + ", the first at "
                    + line.publication().place(errors.get(0)) + ": " + errors.get(0).message());
        }
    }

    private static void untried(QaSummary summary, List<String> points) {
        QaSummary.Share outcomes = summary.outcomes();
        if (outcomes.some() < outcomes.all()) {
            points.add("No example takes " + (outcomes.all() - outcomes.some()) + " of its " + outcomes.all()
                    + " results.");
        }
        List<String> never = summary.faults().stream().filter(fault -> !fault.hasExample())
                .map(fault -> title(fault.fault())).toList();
        if (!never.isEmpty()) {
            points.add("No example is a case of " + String.join(", ", never) + ".");
        }
    }

    private static String names(QaSummary.GroupLine group) {
        return group.faults().stream().map(Attention::title).collect(Collectors.joining(", "));
    }

    /** Faults that nothing tells apart, and what would separate them. */
    static String apart(QaSummary.GroupLine group) {
        String found = "Nothing tells apart" + (group.acknowledged() ? ", as the author says: " : ": ") + names(group) + ". ";
        if (!group.unused().isEmpty()) {
            return found + Rows.listed(Told.steps(group.unused())) + " would, but nothing leads there.";
        }
        return found + (group.silent().isEmpty() ? "No step of the text would; it takes another one."
                : "What all of them show at " + Rows.listed(Told.steps(group.silent())) + " is not stated; it may separate them.");
    }

    static String title(Fault fault) {
        return fault.title().isBlank() ? fault.name().text() : fault.title();
    }
}

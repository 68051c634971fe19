/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.stream.Collectors;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.page.Tag;

/** What all paths of one procedure come to, and which is the worst. */
final class QualityPaths {
    private static final int MOST_STEPS = 60;

    private QualityPaths() {
    }

    static void add(Tag section, PathReport paths, Procedure procedure) {
        section.say("h3", "", "Paths");
        section.say("p", "", reach(paths));
        if (paths.paths().isEmpty()) {
            section.say("p", "open", "A loop has no bound, or no path ends: there is no longest path to tell.");
        }
        paths.slowest().ifPresent(path -> section.say("p", "", "Worst in time, "
                + paths.worstSeconds().map(PrintedNumbers::minutes).orElse("") + " in " + steps(path) + ": " + ownSteps(path, procedure) + "."));
        paths.longest().ifPresent(path -> {
            boolean same = paths.slowest().filter(path::equals).isPresent();
            section.say("p", "", same ? "No path has more steps."
                    : "Most steps on a path: " + path.size() + ".");
        });
        paths.shortest().ifPresent(path -> section.say("p", "", "Fewest to a conclusion: " + path.size() + "."));
        if (!paths.always().isEmpty()) {
            section.say("p", "", "On every path: " + Rows.listed(Told.steps(paths.always().stream()
                    .flatMap(name -> procedure.step(name).stream()).toList())) + ".");
        }
    }

    private static String steps(List<PathStep> path) {
        return Rows.count(path.size(), "step", "steps");
    }

    private static String reach(PathReport paths) {
        return "Some path comes to " + paths.stepsReached() + " of " + Rows.count(paths.steps(), "step", "steps") + " and takes "
                + paths.outcomesTaken() + " of " + Rows.count(paths.outcomes(), "result", "results") + ". "
                + paths.paths().map(count -> (count.bitLength() > 40 ? "More than 10^12 sequences of results end"
                        : count.bitLength() == 1 ? "1 sequence of results ends" : count + " sequences of results end")
                        + " at a conclusion. ").orElse("")
                + (paths.complete() ? "All " : "More than ") + paths.states() + " states of the set-up were looked at"
                + (paths.exact() ? ", bounds on repeats counted." : ", bounds on repeats taken as open.");
    }

    /** Of a routine only the step that performs it is named; the JSON of the report has every step. */
    private static String ownSteps(List<PathStep> path, Procedure procedure) {
        List<PathStep> own = path.stream().filter(step -> step.toString().indexOf('/') < 0).toList();
        return path(own, procedure) + (own.size() < path.size() ? " (the steps inside routines left out)" : "");
    }

    static String path(List<PathStep> path, Procedure procedure) {
        return path.stream().limit(MOST_STEPS).map(step -> Told.step(step, procedure)).collect(Collectors.joining(", "))
                + (path.size() > MOST_STEPS ? " and " + (path.size() - MOST_STEPS) + " more" : "");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.publish.page.Tag;
import org.faultwright.quantity.Exact;

/** What all paths of one procedure come to, and which is the worst. */
final class QualityPaths {
    private static final int MOST_STEPS = 60;

    private QualityPaths() {
    }

    static void add(Tag section, PathReport paths, TimeStudy.Figure faults, CardSteps steps) {
        section.say("h3", "", "Paths and times");
        section.say("p", paths.stepsReached() == paths.steps() && paths.outcomesTaken() == paths.outcomes() ? "" : "open", reach(paths));
        if (paths.paths().isEmpty()) {
            section.say("p", "open", "A loop has no bound, or no path ends: there is no longest path to tell.");
        }
        worst(section, paths, faults);
        paths.slowest().ifPresent(path -> section.say("p", "", "The longest in time: " + steps(path, steps) + "."));
        paths.longest().filter(path -> paths.slowest().filter(path::equals).isEmpty()).ifPresent(path -> section.say("p", "", "The one with most steps: " + steps(path, steps) + "."));
        paths.shortest().ifPresent(path -> section.say("p", "", "The shortest to a conclusion: " + steps(path, steps) + "."));
        if (!paths.always().isEmpty()) {
            section.say("p", "", "On every path: step " + steps.numbers(paths.always().stream().flatMap(name -> steps.plan().procedure().step(name).stream()).toList()) + ".");
        }
    }

    /** Why there are two. */
    private static void worst(Tag section, PathReport paths, TimeStudy.Figure faults) {
        paths.worstSeconds().ifPresent(longest -> {
            Optional<Exact> worst = faults.worst();
            String all = PrintedNumbers.minutes(longest);
            String ofFaults = worst.map(PrintedNumbers::minutes).orElse("");
            section.say("p", "", worst.isEmpty() || ofFaults.equals(all) ? "No path takes longer than " + all + "."
                    : "A unit with one of the faults above is done in " + ofFaults + " at worst: this is what the card says, in whole minutes. The longest path takes " + all
                            + ": it goes against what the fault table says of every single fault, or ends without finding one.");
        });
    }

    private static String reach(PathReport paths) {
        return (paths.stepsReached() == paths.steps() ? "Every step can be come to" : "Only " + paths.stepsReached() + " of " + Phrases.counted(paths.steps(), "step", "steps") + " can be come to")
                + " and " + (paths.outcomesTaken() == paths.outcomes() ? "every result can be had" : "only " + paths.outcomesTaken() + " of " + Phrases.counted(paths.outcomes(), "result", "results") + " can be had")
                + " (" + Phrases.counted(paths.steps(), "step", "steps") + ", " + Phrases.counted(paths.outcomes(), "result", "results") + ", those inside routines counted once).";
    }

    /** How many, and the numbers of those of the procedure itself. */
    private static String steps(List<PathStep> path, CardSteps steps) {
        List<PathStep> own = path.stream().filter(step -> step.toString().indexOf('/') < 0).toList();
        return Phrases.counted(path.size(), "step", "steps") + (own.size() < path.size() ? ", " + (path.size() - own.size()) + " of them inside routines; the others are " : ": ")
                + path(own, steps);
    }

    static String path(List<PathStep> path, CardSteps steps) {
        return steps.path(path.stream().limit(MOST_STEPS).toList()) + (path.size() > MOST_STEPS ? " and " + (path.size() - MOST_STEPS) + " more" : "");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.examples.WalkedExample;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.time.TimeToGo;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.quantity.Exact;

/** Where a walk stands after some answers, with all that is shown of it. It never changes. */
final class WalkState {
    /** One answer that fits. @param before where it was given @param doubtful whether its reading lies too near a limit to decide */
    record GivenAnswer(Walk before, WalkAnswer answer, boolean doubtful) {
    }

    private final Procedure procedure;
    private final List<GivenAnswer> passed = new ArrayList<>();
    private final Walk here;
    private final Optional<String> stopped;
    private final Optional<WalkAnswer> unfit;
    private final List<Suspects.Suspect> suspects;
    private final TimeToGo.Range toGo;
    private final Optional<ReadingEntry> entry;
    private final List<Optional<ReadingEntry.Row>> rows;
    private final List<WalkAnswer.Reading> computed;

    /** Absent for a text without a step to begin at. */
    static Optional<WalkState> of(StudiedProcedure studied, List<WalkAnswer> answers) {
        return Walk.start(studied.procedure()).map(first -> new WalkState(studied, first, answers));
    }

    private WalkState(StudiedProcedure studied, Walk first, List<WalkAnswer> answers) {
        procedure = studied.procedure();
        Walk at = settled(first);
        Optional<String> misfit = Optional.empty();
        for (WalkAnswer answer : answers) {
            Walk before = towards(at, answer.place());
            misfit = misfit(studied, before, answer);
            if (misfit.isPresent()) {
                break;
            }
            passed.add(new GivenAnswer(before, answer, isDoubtful(studied, before, answer)));
            at = settled(after(before, answer));
        }
        here = at;
        stopped = misfit;
        unfit = misfit.map(none -> answers.get(passed.size())).filter(answer -> answer.place().equals(here.label()));
        suspects = studied.suspects().after(here.evidence());
        toGo = studied.ahead().from(here);
        entry = here.isEnd() ? Optional.empty() : studied.entry(here.step());
        rows = studied.rows(here.step());
        computed = computed(studied, here);
    }

    // ---- the answers, one after the other

    /** Into routines whose own step has nothing to say. */
    private static Walk settled(Walk walk) {
        Walk at = walk;
        while (isSilent(at)) {
            at = at.entered();
        }
        return at;
    }

    /** A step that had nothing to say when an answer was given inside its routine may have something to say now. */
    private static Walk towards(Walk walk, String place) {
        Walk at = walk;
        while (at.canEnter() && place.startsWith(at.label() + "/")) {
            at = at.entered();
        }
        return at;
    }

    private static boolean isSilent(Walk walk) {
        StepFrame frame = walk.step().frame();
        return walk.canEnter() && walk.due().isEmpty() && walk.unmet().isEmpty() && frame.hint().isEmpty() && frame.tools().isEmpty()
                && frame.handles().isEmpty() && frame.precautions().liveBecause().isEmpty() && frame.waits().isEmpty() && frame.pictures().isEmpty();
    }

    private static Optional<String> misfit(StudiedProcedure studied, Walk at, WalkAnswer answer) {
        if (answer.result().isEmpty()) {
            return at.label().startsWith(answer.place() + "/") || at.label().equals(answer.place()) && at.canEnter() ? Optional.empty()
                    : Optional.of("The text has changed: the walk no longer comes to the routine at " + quoted(answer.place()) + ". Go on from here.");
        }
        if (!at.label().equals(answer.place())) {
            return Optional.of("The text has changed: the walk comes here now, and no longer to " + quoted(answer.place()) + ". Go on from here.");
        }
        Optional<Outcome> outcome = outcome(at, answer);
        if (at.isEnd() || outcome.isEmpty() || at.canEnter()) {
            return Optional.of("The text has changed: " + quoted(at.step().name().text()) + " no longer has the result " + quoted(answer.result().get())
                    + ". Choose again.");
        }
        List<WalkAnswer.Reading> readings = at.step() instanceof Step.Calculate && !answer.readings().isEmpty() ? computed(studied, at) : answer.readings();
        Optional<Outcome> now = answer.readings().isEmpty() ? outcome : studied.outcome(at.step(), readings);
        return now.equals(outcome) ? Optional.empty() : Optional.of("The text has changed: " + readings(readings.isEmpty() ? answer.readings() : readings) + " at " + quoted(at.step().name().text())
                + now.map(led -> " now leads to " + quoted(led.key())).orElse(" now leads to no result") + ", no longer to " + quoted(outcome.get().key())
                + ". Look at it again.");
    }

    /** What a step computes from the readings so far; empty where one is missing. */
    static List<WalkAnswer.Reading> computed(StudiedProcedure studied, Walk at) {
        return studied.entry(at.step()).flatMap(entry -> at.computed().map(base -> WalkAnswer.Reading.computed(entry, base))).stream().toList();
    }

    private static String readings(List<WalkAnswer.Reading> readings) {
        return String.join(", ", readings.stream().map(WalkAnswer.Reading::words).toList());
    }

    private static String quoted(String words) {
        return "\u201c" + words + "\u201d";
    }

    private static Optional<Outcome> outcome(Walk at, WalkAnswer answer) {
        return at.step().outcomes().stream().filter(one -> answer.result().filter(one.key()::equals).isPresent()).findFirst();
    }

    private static boolean isDoubtful(StudiedProcedure studied, Walk at, WalkAnswer answer) {
        return answer.readings().size() == 1 && studied.entry(at.step()).flatMap(entry -> answer.readings().get(0).base()
                .map(base -> entry.judge(at.step(), base).doubtful())).orElse(false);
    }

    private static Walk after(Walk at, WalkAnswer answer) {
        if (answer.result().isEmpty()) {
            return at.label().equals(answer.place()) ? at.entered() : at;
        }
        Optional<Exact> reading = at.step() instanceof Step.Calculate ? at.computed()
                : answer.readings().size() == 1 ? answer.readings().get(0).base() : Optional.empty();
        return at.take(outcome(at, answer).orElseThrow(), reading);
    }

    // ---- what is shown

    Procedure procedure() {
        return procedure;
    }

    Walk walk() {
        return here;
    }

    /** The answers that fit. */
    List<GivenAnswer> passed() {
        return List.copyOf(passed);
    }

    /** Why the answers behind these no longer fit, and what to do. */
    Optional<String> stopped() {
        return stopped;
    }

    /** The first answer that no longer fits, where it was given at this very place. */
    Optional<WalkAnswer> unfit() {
        return unfit;
    }

    /** The likeliest first; none where no fault of the table explains every result. */
    List<Suspects.Suspect> suspects() {
        return suspects;
    }

    /** Seconds from the beginning of this step to a conclusion. */
    TimeToGo.Range toGo() {
        return toGo;
    }

    Optional<ReadingEntry> entry() {
        return entry;
    }

    /** How each row of a table is entered. */
    List<Optional<ReadingEntry.Row>> rows() {
        return rows;
    }

    /** What the step computes from the readings so far. */
    Optional<WalkAnswer.Reading> computed() {
        return computed.stream().findFirst();
    }

    /** Where a routine was come to: how many answers were given before it was entered. @param depth counted from the outside, 0 the outermost */
    int answersBefore(int depth) {
        String place = String.join("/", here.callers().subList(0, depth + 1).stream().map(step -> step.name().text()).toList());
        int count = passed.size();
        while (count > 0 && passed.get(count - 1).answer().place().startsWith(place + "/")) {
            count--;
        }
        return count > 0 && passed.get(count - 1).answer().equals(WalkAnswer.begun(place)) ? count - 1 : count;
    }

    /** The results so far of the procedure's own steps, for an example. */
    List<WalkedExample.Result> results() {
        List<WalkedExample.Result> results = new ArrayList<>();
        for (int i = 0; i < passed.size(); i++) {
            Walk after = i + 1 < passed.size() ? passed.get(i + 1).before() : here;
            int told = passed.get(i).before().evidence().size();
            if (after.evidence().size() > told) {
                Suspects.Evidence last = after.evidence().get(told);
                List<WalkAnswer.Reading> readings = passed.get(i).before().callers().isEmpty() ? passed.get(i).answer().readings() : List.of();
                last.step().outcomes().stream().filter(one -> one.key().equals(last.outcome())).findFirst()
                        .ifPresent(outcome -> results.add(new WalkedExample.Result(last.step(), outcome,
                                readings.size() == 1 ? Optional.of(readings.get(0).forExample()) : Optional.empty())));
            }
        }
        return results;
    }
}

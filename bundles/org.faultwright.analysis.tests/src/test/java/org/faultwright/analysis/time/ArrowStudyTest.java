/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ArrowStudyTest {
    /** Every share is stated. */
    private static final String TEXT = """
            procedure Timer "Timer does not switch off"
            fault Relay "Relay" { cases 60 shows Click yes 70 % or no 30 %, Hum yes }
            fault Coil "Coil" { cases 40 shows Click no, Hum yes 25 % or no 75 % }
            check Click "Click?" { takes 60 s yes -> Changed no -> Hum }
            check Hum "Hum?" { takes 30 s yes -> Changed no -> Click at most 1 times, else Passed }
            conclude Changed "Changed" { finds Relay, Coil }
            conclude Passed "Passed on" { refers to "the timer bench" }
            """;

    /**
     * By hand. Click is met by 1 unit, and again by the Coil that has not hummed: 0.4 x 0.75 = 0.3; that comes to Hum a second time and
     * parts once more: 0.075 hum, 0.225 are passed on. Times are means over those that come by: 60 s or 90 s to Hum's end the first time,
     * 180 s the second.
     */
    @ParameterizedTest
    @CsvSource({"Click, 0, false, 0.42, 60", "Click, 1, false, 0.88, 90.681818", "Hum, 0, false, 0.355, 109.014085", "Hum, 1, false, 0.3, 90",
        "Hum, 1, true, 0.225, 180"})
    void should_count_who_comes_by(String step, int outcome, boolean otherwise, double share, double seconds) {
        ArrowStudy.Figure figure = ArrowStudy.of(Texts.procedure(TEXT)).of(step, outcome, otherwise).orElseThrow();

        assertEquals(share, figure.share(), 1e-6);
        assertEquals(seconds, figure.seconds(), 1e-4);
    }

    @Test
    void should_say_nothing_of_an_arrow_that_nobody_takes_and_without_faults() {
        assertEquals(Optional.empty(), ArrowStudy.of(Texts.procedure(TEXT)).of("Click", 0, true));
        assertEquals(Optional.empty(), ArrowStudy.of(Texts.procedure(TEXT)).of("Nowhere", 0, false));
        assertTrue(ArrowStudy.of(Texts.procedure(TEXT.replaceAll("fault .*\n", "").replace("finds Relay, Coil", "finds nothing"))).isEmpty());
    }

    /** What comes to a conclusion, against the exact chain that the fault table's endings are worked out with. */
    @Test
    void should_bring_as_many_units_to_a_conclusion_as_the_chain_of_the_endings() {
        Procedure timer = Texts.procedure(TEXT);
        FaultWalks walks = FaultWalks.of(timer);
        ArrowStudy study = ArrowStudy.of(timer);
        for (Step end : timer.steps().stream().filter(Step.Conclude.class::isInstance).toList()) {
            Exact expected = Exact.ZERO;
            for (FaultWalk walk : walks.all()) {
                for (FaultWalk.Ending ending : walk.endings()) {
                    if (ending.conclusion() == end) {
                        expected = expected.plus(walks.table().weight(walk.fault()).times(ending.probability().orElseThrow()));
                    }
                }
            }
            assertEquals(expected.doubleValue(), comingTo(timer, study, end), 1e-6, end.name().text());
        }
    }

    /** Whatever comes to a step leaves it. */
    @Test
    void should_lose_no_unit_on_the_way() {
        Procedure timer = Texts.procedure(TEXT);
        ArrowStudy study = ArrowStudy.of(timer);
        for (Step step : timer.steps()) {
            double come = comingTo(timer, study, step) + (timer.first().orElseThrow() == step ? 1 : 0);
            double gone = 0;
            for (int i = 0; i < step.outcomes().size(); i++) {
                gone += share(study, step, i, false) + share(study, step, i, true);
            }
            assertEquals(come, step instanceof Step.Conclude ? come : gone, 1e-6, step.name().text());
        }
    }

    @Test
    void should_end_with_a_procedure_that_goes_round_for_ever() {
        String endless = TEXT.replace("no -> Click at most 1 times, else Passed", "no -> Click").replace("yes 25 % or no 75 %", "no");

        assertTrue(ArrowStudy.of(Texts.procedure(endless)).of("Hum", 1, false).orElseThrow().share() > 100);
    }

    private static double comingTo(Procedure procedure, ArrowStudy study, Step step) {
        double come = 0;
        for (Step from : procedure.steps()) {
            for (int i = 0; i < from.outcomes().size(); i++) {
                Outcome outcome = from.outcomes().get(i);
                come += outcome.target().filter(target -> target.text().equals(step.name().text())).isPresent() ? share(study, from, i, false) : 0;
                come += outcome.repeat().filter(bound -> bound.otherwise().text().equals(step.name().text())).isPresent() ? share(study, from, i, true) : 0;
            }
        }
        return come;
    }

    private static double share(ArrowStudy study, Step from, int outcome, boolean otherwise) {
        return study.of(from.name().text(), outcome, otherwise).map(ArrowStudy.Figure::share).orElse(0.0);
    }
}

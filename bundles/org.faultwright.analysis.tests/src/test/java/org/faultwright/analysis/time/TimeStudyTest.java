/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeStudyTest {
    /** Every share is stated; the remedy lets the fault pass TryIt, whatever it shows before. */
    private static final String LOOPS = """
            procedure Timer "Timer does not switch off"
            fault Relay "Relay" { cases 60 shows Click no 70 % or yes 20 % or twice 10 %, Hum yes 50 % or no 50 %, Wait long 75 % or short 25 % remedy Change }
            fault Coil "Coil" { cases 40 shows Click yes 10 % or no 90 %, Hum no, Wait short remedy Change }
            check Click "Click?" { takes 30 s yes -> Hum no -> Wait twice -> Click at most 2 times, else Passed }
            check Hum "Hum?" { takes 90 s yes -> Click no -> Change }
            check Wait "Wait?" { takes 7 min long -> Hum at most 3 times, else Change short -> Change }
            do Change "Change" { takes 5 min then -> TryIt }
            check TryIt "Switches off?" { verifies repair takes 2 min yes -> Changed no -> Passed }
            conclude Changed "Changed" { finds Relay, Coil }
            conclude Passed "Passed on" { refers to "the timer bench" }
            """;

    private static String minutes(Optional<Exact> seconds) {
        return seconds.map(PrintedNumbers::minutes).orElse("endless");
    }

    /** 200 000 units of each fault, taken through the text by dice: mean, spread and bound, not by the chain that is judged. */
    @Test
    void should_expect_the_mean_of_a_simulation() {
        Procedure timer = Texts.procedure(LOOPS);
        TimeStudy study = TimeStudy.of(timer);
        Random random = new Random(41);
        for (int fault = 0; fault < timer.faults().size(); fault++) {
            int units = 200_000;
            double sum = 0;
            double squares = 0;
            for (int unit = 0; unit < units; unit++) {
                double time = simulated(timer, fault, random);
                sum += time;
                squares += time * time;
            }
            double mean = sum / units;
            double error = Math.sqrt((squares / units - mean * mean) / units);
            double expected = study.of(timer.faults().get(fault)).expected().orElseThrow().doubleValue();

            assertEquals(mean, expected, 4 * error, timer.faults().get(fault).name().text());
        }
    }

    private static double simulated(Procedure timer, int fault, Random random) {
        Map<Outcome, Integer> taken = new HashMap<>();
        Step at = timer.first().orElseThrow();
        double seconds = 0;
        while (!(at instanceof Step.Conclude)) {
            seconds += at.frame().takes().orElseThrow().value().base().doubleValue();
            Outcome outcome = at.name().text().equals("TryIt") ? at.outcomes().get(0) : drawn(timer, fault, at, random);
            boolean used = outcome.repeat().map(r -> taken.getOrDefault(outcome, 0) >= r.atMost()).orElse(false);
            taken.merge(outcome, 1, Integer::sum);
            Name to = used ? outcome.repeat().orElseThrow().otherwise() : outcome.target().orElseThrow();
            at = timer.step(to).orElseThrow();
        }
        return seconds;
    }

    private static Outcome drawn(Procedure timer, int fault, Step step, Random random) {
        double dice = random.nextDouble() * 100;
        for (var showing : timer.faults().get(fault).shows()) {
            if (showing.step().text().equals(step.name().text())) {
                for (var possible : showing.possible()) {
                    dice -= possible.share().map(Exact::doubleValue).orElse(100.0);
                    if (dice < 0) {
                        return step.outcomes().stream().filter(o -> o.key().equals(possible.words().text())).findFirst().orElseThrow();
                    }
                }
            }
        }
        return step.outcomes().get(0);
    }

    /** By hand: a question of 1 min that comes again in half of the cases is asked twice on average. */
    @Test
    void should_expect_two_rounds_of_a_loop_left_half_the_time() {
        TimeStudy study = TimeStudy.of(Texts.procedure("""
                procedure Timer "Timer"
                fault Relay "Relay" { shows Click yes 50 % or no 50 % }
                check Click "Click?" { takes 1 min yes -> Click no -> Done }
                conclude Done "Done" { finds Relay }
                """));

        assertEquals("2 min", minutes(study.inAll().expected()));
        assertEquals("endless", minutes(study.inAll().worst()));
        assertEquals(List.of(), study.untimed());
    }

    @Test
    void should_weigh_the_faults_and_take_the_slowest_for_the_worst() {
        Procedure timer = Texts.procedure("""
                procedure Timer "Timer"
                fault Relay "Relay" { cases 3 shows Click no }
                fault Sensor "Sensor" { cases 1 shows Click yes, Warm no }
                check Click "Click?" { takes 1 min no -> RelayBad yes -> Warm }
                check Warm "Warm?" { takes 4 min no -> SensorBad yes -> SensorBad }
                conclude RelayBad "Relay" { finds Relay }
                conclude SensorBad "Sensor" { finds Sensor }
                """);
        TimeStudy study = TimeStudy.of(timer);

        assertEquals("2 min", minutes(study.inAll().expected()));
        assertEquals("5 min", minutes(study.inAll().worst()));
        assertEquals("Click (yes), Warm (no), SensorBad", String.join(", ",
                study.inAll().worstPath().stream().map(Object::toString).toList()));
        assertEquals("1 min", minutes(study.of(timer.faults().get(0)).expected()));
        assertEquals("5 min", minutes(study.anyPath().worst()));
        assertTrue(!study.inAll().assumed());
    }

    /** Results that the table leaves open count alike, as far as the fault is still found; a perform takes its routine's time. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            takes 2 min  | 4 min   | 4 min
            ''           | 6 min   | 6.5 min
            """)
    void should_take_the_time_of_a_routine_unless_the_step_states_its_own(String takes, String expected, String worst) {
        TimeStudy study = TimeStudy.of(Texts.procedure("""
                procedure Timer "Timer"
                routine Open "Open" { exits open, stuck
                    check Screws "Screws?" { takes 3 min yes -> Lift no -> Lift2 }
                    do Lift "Lift" { takes 30 s then -> open }
                    do Lift2 "Lift" { takes 90 s then -> open }
                    check Rust "Rust?" { takes 50 min yes -> stuck no -> stuck }
                }
                fault Relay "Relay" { shows Click no, OpenIt open }
                perform OpenIt "Open" by Open { TAKES open -> Click stuck -> Passed }
                check Click "Click?" { takes 2 min no -> RelayBad yes -> Passed }
                conclude RelayBad "Relay" { finds Relay }
                conclude Passed "Passed" { refers to "the timer bench" }
                """.replace("TAKES", takes)));

        assertEquals(expected, minutes(study.inAll().expected()));
        assertEquals(worst, minutes(study.inAll().worst()));
    }

    @Test
    void should_list_the_steps_that_state_no_time() {
        TimeStudy study = TimeStudy.of(Texts.procedure("""
                procedure Timer "Timer"
                check Click "Click?" { no -> Wait yes -> Wait }
                do Wait "Wait" { takes 1 V then -> Done }
                conclude Done "Done" { finds nothing }
                """));

        assertEquals(List.of("Click", "Wait"), study.untimed().stream().map(s -> s.name().text()).toList());
        assertEquals("0 min", minutes(study.inAll().expected()));
    }

    @ParameterizedTest
    @CsvSource({"90, 1.5 min", "600, 10 min", "40, 0.7 min", "4263, 71.1 min"})
    void should_print_times_in_minutes(int seconds, String text) {
        assertEquals(text, PrintedNumbers.minutes(Exact.of(seconds)));
    }

    @Test
    void should_print_shares_that_are_neither_all_nor_nothing() {
        assertEquals(List.of("0 %", "under 1 %", "41 %", "over 99 %", "100 %"), Stream.of("0", "0.001", "0.41", "0.999", "1")
                .map(Exact::of).map(PrintedNumbers::percent).toList());
    }
}

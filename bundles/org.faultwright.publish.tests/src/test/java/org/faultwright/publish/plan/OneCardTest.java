/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.chart.ChartMaker;
import org.junit.jupiter.api.Test;

/** One text has one card, whatever numbers a machine gives its objects: those decide the order of what is kept by identity. */
class OneCardTest {
    /** Ways of the virtual machine to number objects (its option {@code hashCode}): by chance, all alike, by place in memory, by thread. */
    private static final String[] NUMBERINGS = { "0", "2", "4", "5" };

    /** Prints the numbers of all steps, as they follow one another, and where each stands in its chart. */
    public static final class Numbers {
        private Numbers() {
        }

        public static void main(String[] arguments) {
            for (Path demo : Samples.demos()) {
                Publication publication = Samples.demo(demo);
                new CardPlan(publication).placed().forEach(placed -> System.out.println(placed.label() + " " + placed.step().name().text()));
                // with the routines of the library: a step that leads back to itself has its arrow on one side, and both may be alike
                publication.procedure().graphs().forEach(graph -> System.out.println(ChartMaker.of(List.of(new ChartMaker.Part("", "", graph)), publication.procedure().scope(),
                        step -> false, (key, step) -> "", () -> false)));
            }
        }
    }

    @Test
    void should_number_and_draw_steps_alike_on_every_machine() throws IOException, InterruptedException {
        Set<String> cards = new TreeSet<>();
        for (String numbering : NUMBERINGS) {
            Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                    "-XX:+UseSerialGC", "-XX:+UnlockExperimentalVMOptions", "-XX:hashCode=" + numbering, "-cp", System.getProperty("java.class.path"),
                    Numbers.class.getName()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
            String numbers = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(process.waitFor(10, TimeUnit.SECONDS));
            assertEquals(0, process.exitValue());
            assertTrue(numbers.lines().count() > 250, numbers);
            cards.add(numbers);
        }
        assertEquals(1, cards.size(), () -> String.join("\n----\n", cards));
    }
}

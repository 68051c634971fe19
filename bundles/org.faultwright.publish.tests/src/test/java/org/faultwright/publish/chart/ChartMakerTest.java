/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;

class ChartMakerTest {
    private static final Predicate<String> FOLDED = key -> false;
    private static final Predicate<String> OPENED = key -> true;

    private static Chart chart(Procedure procedure, Predicate<String> open) {
        return ChartMaker.of(List.of(new ChartMaker.Part("", "", procedure)), procedure.scope(), open, (key, step) -> "", () -> false);
    }

    private static Procedure text(String text) {
        return Samples.text("procedure Test " + text).procedure();
    }

    private static void isSound(Chart chart) {
        for (ChartBox box : chart.boxes()) {
            assertTrue(box.x() >= 0 && box.y() >= 0 && box.x() + box.width() <= chart.width() + 1 && box.y() + box.height() <= chart.height() + 1,
                    box.key() + " lies outside");
            for (ChartBox other : chart.boxes()) {
                boolean within = other.key().startsWith(box.key() + "/") || box.key().startsWith(other.key() + "/");
                boolean apart = box.x() + box.width() <= other.x() || other.x() + other.width() <= box.x()
                        || box.y() + box.height() <= other.y() || other.y() + other.height() <= box.y();
                assertTrue(box == other || within || apart, box.key() + " lies over " + other.key());
            }
        }
        for (ChartArrow arrow : chart.arrows()) {
            ChartBox from = chart.box(arrow.from()).orElseThrow();
            ChartBox to = chart.box(arrow.to()).orElseThrow();
            ChartBox.Cell cell = from.cells().get(arrow.cell());
            ChartArrow.Point begin = arrow.points().get(0);
            ChartArrow.Point end = arrow.points().get(arrow.points().size() - 1);
            assertEquals(from.y() + from.height(), begin.y(), 1, arrow.toString());
            assertTrue(begin.x() >= from.x() + cell.x() && begin.x() <= from.x() + cell.x() + cell.width(), arrow.toString());
            assertEquals(to.y(), end.y(), 1, arrow.toString());
            assertEquals(to.x() + to.width() / 2.0, end.x(), 2, arrow.toString());
        }
    }

    /** Every result that leads to a step there is, and the second way of each bounded repetition. */
    private static long ways(Procedure procedure) {
        return procedure.steps().stream().flatMap(step -> step.outcomes().stream())
                .mapToLong(outcome -> outcome.target().flatMap(procedure::step).stream().count()
                        + outcome.repeat().map(Outcome.Repeat::otherwise).flatMap(procedure::step).stream().count()).sum();
    }

    @Test
    void should_lay_no_box_over_another_and_end_every_arrow_at_its_boxes() {
        for (Path demo : Samples.demos()) {
            Procedure procedure = Samples.demo(demo).procedure();
            Chart folded = chart(procedure, FOLDED);

            isSound(folded);
            assertEquals(procedure.steps().size(), folded.boxes().size());
            assertEquals(ways(procedure), folded.arrows().size(), "every way has its arrow");
            isSound(chart(procedure, OPENED));
        }
    }

    @Test
    void should_lay_the_same_steps_out_in_the_same_way() {
        for (Path demo : Samples.demos()) {
            Procedure procedure = Samples.demo(demo).procedure();
            assertEquals(chart(procedure, OPENED), chart(procedure, OPENED));
        }
    }

    @Test
    void should_show_a_routine_as_one_box_until_it_is_opened() {
        Procedure procedure = text("routine R \"Look\" { exits good, bad check A \"Lit?\" { yes -> B no -> bad } do B \"Press\" { then -> good } }"
                + " perform P \"Try it\" by R { good -> End bad -> End } conclude End \"End\" { finds nothing }");

        Chart folded = chart(procedure, FOLDED);
        assertEquals(List.of("P", "End"), folded.boxes().stream().map(ChartBox::key).toList());
        assertFalse(folded.box("P").orElseThrow().open());

        Chart opened = chart(procedure, "P"::equals);
        isSound(opened);
        assertEquals(List.of("P", "P/A", "P/B", "End"), opened.boxes().stream().map(ChartBox::key).toList());
        ChartBox outer = opened.box("P").orElseThrow();
        ChartBox inner = opened.box("P/A").orElseThrow();
        assertTrue(outer.contains(inner.x(), inner.y()) && outer.contains(inner.x() + inner.width(), inner.y() + inner.height()));
        assertEquals(List.of("no", "\u21A9 bad"), inner.cells().get(1).lines(), "back to what performs it, told in words");
        assertEquals(inner.key(), opened.at(inner.x() + 1, inner.y() + 1).orElseThrow().key());
    }

    @Test
    void should_stand_what_a_step_leads_to_below_it() {
        Chart chart = chart(text("check A \"Lit?\" { yes -> B no -> C } do B \"Press\" { then -> C } conclude C \"End\" { finds nothing }"), FOLDED);

        assertTrue(chart.box("A").orElseThrow().begins());
        for (ChartArrow arrow : chart.arrows()) {
            assertTrue(chart.box(arrow.from()).orElseThrow().y() < chart.box(arrow.to()).orElseThrow().y(), arrow.toString());
        }
    }

    @Test
    void should_draw_loops_and_a_step_that_leads_to_itself() {
        Chart chart = chart(text("check A \"Lit?\" { yes -> B no -> A at most 2 times, else C } do B \"Press\" { then -> A }"
                + " conclude C \"End\" { finds nothing }"), FOLDED);

        isSound(chart);
        assertEquals(List.of("A", "B"), chart.to("A").stream().map(ChartArrow::from).sorted().toList());
        assertEquals(List.of("A"), chart.arrows().stream().filter(ChartArrow::otherwise).map(ChartArrow::from).toList());
    }

    @Test
    void should_say_where_a_result_leads_that_has_no_arrow() {
        Chart chart = chart(text("check A \"Lit?\" { yes -> Nowhere no -> B } do B \"Press\" { } conclude C \"End\" { finds nothing }"), FOLDED);

        isSound(chart);
        assertEquals(3, chart.boxes().size());
        assertEquals(List.of("yes", "\u2192 ? Nowhere"), chart.box("A").orElseThrow().cells().get(0).lines());
        assertEquals(1, chart.arrows().size());
        assertTrue(chart.box("B").orElseThrow().cells().isEmpty());
    }

    @Test
    void should_say_that_nothing_leads_to_a_step() {
        Chart chart = chart(text("do A \"One\" { then -> C } do B \"Two\" { then -> C } conclude C \"End\" { finds nothing }"), FOLDED);

        assertEquals(List.of("B"), chart.boxes().stream().filter(box -> box.small().contains("nothing leads here")).map(ChartBox::key).toList());
    }

    @Test
    void should_end_with_routines_that_perform_themselves_and_each_other() {
        Procedure procedure = text("routine R \"R\" { exits out perform A \"Again\" by S { out -> out } }"
                + " routine S \"S\" { exits out perform B \"Again\" by R { out -> out } }"
                + " perform P \"Go\" by R { out -> End } conclude End \"End\" { finds nothing }");

        Chart chart = chart(procedure, OPENED);

        isSound(chart);
        assertTrue(chart.boxes().size() > 5 && chart.boxes().size() < 40, chart.boxes().size() + " boxes");
    }

    @Test
    void should_give_two_steps_of_one_name_a_box_each() {
        Chart chart = chart(text("do A \"One\" { then -> C } do A \"Two\" { then -> C } conclude C \"End\" { finds nothing }"), FOLDED);

        isSound(chart);
        assertEquals(3, chart.boxes().stream().map(ChartBox::key).distinct().count());
    }

    @Test
    void should_lay_out_two_thousand_steps_with_loops() {
        Random random = new Random(7);
        StringBuilder text = new StringBuilder();
        int steps = 2000;
        for (int i = 0; i < steps; i++) {
            int back = random.nextInt(10) == 0 ? Math.max(0, i - random.nextInt(20)) : Math.min(steps, i + 1 + random.nextInt(6));
            text.append(" check S").append(i).append(" \"Lit?\" { yes -> S").append(i + 1).append(" no -> S").append(back).append(" }");
        }
        Chart chart = chart(text(text + " conclude S" + steps + " \"End\" { finds nothing }"), FOLDED);

        assertEquals(steps + 1, chart.boxes().size());
        assertEquals(2 * steps, chart.arrows().size());
    }

    @Test
    void should_stop_when_it_is_told_to() {
        Procedure procedure = Samples.demo(Samples.demos().get(0)).procedure();
        assertThrows(CancellationException.class, () -> ChartMaker.of(List.of(new ChartMaker.Part("", "", procedure)), procedure.scope(),
                FOLDED, (key, step) -> "", () -> true));
    }

    @Test
    void should_draw_conclusions_and_routines_in_other_words_than_steps() {
        Chart chart = chart(Samples.everything().procedure(), FOLDED);
        ChartBox end = chart.boxes().stream().filter(ChartBox::isConclusion).findFirst().orElseThrow();
        ChartBox routine = chart.boxes().stream().filter(box -> box.step() instanceof Step.Perform).findFirst().orElseThrow();

        assertNotEquals(List.of(), end.small());
        assertTrue(routine.small().get(0).startsWith("routine "), routine.small().toString());
    }
}

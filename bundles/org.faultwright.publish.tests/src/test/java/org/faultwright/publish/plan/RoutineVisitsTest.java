/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;

/** How many boxes a routine needs that is come to more than once. */
class RoutineVisitsTest {
    private static final String ROUTINES = """
            routine Prove "Prove" { exits gone, left check Read "Gone?" { yes -> gone no -> left } }
            routine Open "Open" { exits open, shut perform ProveIt by Prove { gone -> open left -> shut } }
            conclude End "End" { finds nothing }
            """;

    private static Routine routine(Procedure procedure, String name) {
        return procedure.scope().routines().stream().filter(one -> one.name().text().equals(name)).findFirst().orElseThrow();
    }

    private static int visits(String steps) {
        Publication publication = Samples.text("procedure P \"P\" begin at A\n" + steps + ROUTINES);
        Procedure procedure = publication.procedure();
        Routine prove = routine(procedure, "Prove");
        return RoutineVisits.of(procedure, prove, procedure.scope(), step -> true);
    }

    @Test
    void should_count_what_one_way_comes_to_and_not_what_several_ways_do() {
        assertEquals(1, visits("""
                check A "Which?" { left -> B right -> C }
                perform B "B" by Prove { gone -> End left -> End }
                perform C "C" by Prove { gone -> End left -> End }
                """));
        assertEquals(2, visits("""
                perform A "A" by Prove { gone -> B left -> End }
                perform B "B" by Prove { gone -> End left -> End }
                """));
    }

    @Test
    void should_count_those_out_of_other_routines() {
        assertEquals(3, visits("""
                perform A "A" by Open { open -> B shut -> End }
                perform B "B" by Prove { gone -> C left -> End }
                perform C "C" by Open { open -> End shut -> End }
                """));
    }

    @Test
    void should_count_twice_what_may_come_round() {
        assertEquals(2, visits("""
                perform A "A" by Prove { gone -> End left -> B }
                check B "Again?" { yes -> A at most 3 times, else End no -> End }
                """));
    }

    @Test
    void should_stop_at_three_and_at_a_routine_that_performs_itself() {
        assertEquals(3, visits("""
                perform A "A" by Prove { gone -> B left -> End }
                perform B "B" by Prove { gone -> C left -> End }
                perform C "C" by Prove { gone -> D left -> End }
                perform D "D" by Prove { gone -> End left -> End }
                """));
        Publication publication = Samples.text("""
                procedure P "P" begin at A
                perform A "A" by Round { out -> End }
                conclude End "End" { finds nothing }
                routine Round "Round" { exits out perform Again by Other { out -> out } }
                routine Other "Other" { exits out perform Back by Round { out -> out } }
                """);
        Procedure procedure = publication.procedure();
        assertEquals(1, RoutineVisits.of(procedure, routine(procedure, "Round"), procedure.scope(), step -> true));
    }
}

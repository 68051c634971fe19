/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.analysis.walk.Tally;
import org.faultwright.analysis.walk.TallyEdits;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.analysis.walk.WalkRecord;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

/** Units drawn at random, walked as the fault table says, written down by the page's own script, read and added up again. */
class SimulatedCasesTest {
    private static final int CASES = 200;
    private static final Publication PUBLICATION = Samples.demo(Samples.demos().stream()
            .filter(file -> file.endsWith("OllenbyFaintLabels.procedure")).findFirst().orElseThrow());
    private static final Procedure PROCEDURE = PUBLICATION.procedure();
    private static final String TREE = Samples.string("tree-json", PUBLICATION);
    /** Other weights than the text's, so that nothing can be read off the text. */
    private static final double[] DRAWN = { 0.10, 0.15, 0.20, 0.25, 0.12, 0.10, 0.08 };
    private static final int SECONDS_AT_EACH = 50;

    /** A move as the page keeps it: into a routine where it has no result. */
    private record Move(Optional<String> outcome) {
    }

    private static Fault draw(Random random) {
        double at = random.nextDouble();
        for (int i = 0; i < DRAWN.length - 1; i++) {
            at -= DRAWN[i];
            if (at < 0) {
                return PROCEDURE.faults().get(i);
            }
        }
        return PROCEDURE.faults().get(DRAWN.length - 1);
    }

    private static List<Move> simulate(Fault fault, Suspects suspects, Random random) {
        List<Move> moves = new ArrayList<>();
        Walk walk = Walk.start(PROCEDURE).orElseThrow();
        Set<String> remedies = new HashSet<>();
        while (!walk.isEnd()) {
            Step step = walk.step();
            fault.remedies().stream().filter(name -> name.text().equals(step.name().text())).forEach(name -> remedies.add(name.text()));
            String shown = step.outcomes().size() == 1 ? step.outcomes().get(0).key() : drawn(suspects.shares(fault, step, remedies.isEmpty()
                    ? Suspects.Remedied.NO : remedies.size() == fault.remedies().size() ? Suspects.Remedied.YES : Suspects.Remedied.IN_PART), random);
            if (walk.canEnter()) {
                walk = leave(walk, shown, moves);
            } else {
                moves.add(new Move(Optional.of(shown)));
                walk = walk.take(step.outcomes().stream().filter(one -> one.key().equals(shown)).findFirst().orElseThrow());
            }
        }
        return moves;
    }

    private static String drawn(Map<String, Exact> shares, Random random) {
        double at = random.nextDouble();
        String last = "";
        for (Map.Entry<String, Exact> one : shares.entrySet()) {
            last = one.getKey();
            at -= one.getValue().doubleValue();
            if (at < 0) {
                return last;
            }
        }
        return last;
    }

    private record Inside(Walk walk, List<Move> moves) {
    }

    /** The shortest way through the routine to that exit. */
    private static Walk leave(Walk from, String exit, List<Move> moves) {
        Deque<Inside> open = new ArrayDeque<>(List.of(new Inside(from.entered(), List.of(new Move(Optional.empty())))));
        Set<Object> seen = new HashSet<>();
        while (!open.isEmpty()) {
            Inside here = open.remove();
            if (here.walk().evidence().size() > from.evidence().size()) {
                if (here.walk().evidence().get(from.evidence().size()).outcome().equals(exit)) {
                    moves.addAll(here.moves());
                    return here.walk();
                }
            } else if (here.walk().canEnter()) {
                open.add(new Inside(here.walk().entered(), Stream.concat(here.moves().stream(), Stream.of(new Move(Optional.empty()))).toList()));
            } else if (seen.add(List.of(here.walk().label(), here.walk().setUp(), here.moves().size() / 8))) {
                here.walk().step().outcomes().forEach(outcome -> open.add(new Inside(here.walk().take(outcome),
                        Stream.concat(here.moves().stream(), Stream.of(new Move(Optional.of(outcome.key())))).toList())));
            }
        }
        throw new AssertionError("no way through " + from.label() + " to " + exit);
    }

    private static String kept(List<Move> moves, Random random) {
        JsonArray array = new JsonArray();
        moves.forEach(move -> {
            JsonObject one = new JsonObject();
            move.outcome().ifPresentOrElse(outcome -> one.addProperty("outcome", outcome), () -> one.addProperty("enter", true));
            one.addProperty("at", "2026-03-01T08:00:00.000Z");
            one.addProperty("seconds", move.outcome().isPresent() ? SECONDS_AT_EACH : 0);
            array.add(one);
        });
        JsonObject kept = new JsonObject();
        kept.addProperty("id", "urn:uuid:" + new UUID(random.nextLong(), random.nextLong()));
        kept.addProperty("begun", "2026-03-01T08:00:00.000Z");
        kept.add("moves", array);
        return kept.toString();
    }

    private static List<JsonObject> records(Map<String, Integer> drawn) {
        Suspects suspects = Suspects.of(PROCEDURE);
        Random random = new Random(200);
        List<JsonObject> records = new ArrayList<>();
        try (WalkScript script = new WalkScript()) {
            for (int i = 0; i < CASES; i++) {
                Fault fault = draw(random);
                JsonObject record = script.written(TREE, kept(simulate(fault, suspects, random), random));
                // a fault may look like another, or like none: what the conclusion says is what a bench can know
                drawn.merge(record.has("found") ? record.getAsJsonArray("found").get(0).getAsString() : "", 1, Integer::sum);
                records.add(record);
            }
        }
        return records;
    }

    @Test
    void should_add_up_to_the_cases_that_they_were_drawn_from() throws RecordRefused {
        Map<String, Integer> drawn = new TreeMap<>();
        List<WalkRecord> read = new ArrayList<>();
        for (JsonObject record : records(drawn)) {
            read.add(RecordFile.read(record.toString(), PROCEDURE));
        }
        Tally tally = new Tally(PROCEDURE, read);
        assertEquals(CASES, tally.records());
        assertEquals(0, tally.unfinished());
        tally.cases().forEach(one -> assertEquals(Exact.of(drawn.getOrDefault(one.fault().name().text(), 0)), one.met(), one.fault().name().text()));
        double expected = 0;
        double apart = 0;
        for (int i = 0; i < DRAWN.length; i++) {
            expected = CASES * DRAWN[i];
            apart += Math.pow(tally.cases().get(i).met().doubleValue() - expected, 2) / expected;
        }
        // chi-square with 6 degrees of freedom, 1 in 1000 above: NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.4
        assertTrue(apart < 22.458, "chi-square " + apart);
        assertEquals(List.of(), tally.unexpected());
    }

    @Test
    void should_propose_the_cases_of_text_and_records_together() throws RecordRefused {
        Map<String, Integer> drawn = new TreeMap<>();
        List<WalkRecord> read = new ArrayList<>();
        for (JsonObject record : records(drawn)) {
            read.add(RecordFile.read(record.toString(), PROCEDURE));
        }
        Tally tally = new Tally(PROCEDURE, read);
        List<Fix> edits = TallyEdits.cases(tally);
        assertEquals(drawn.keySet().stream().filter(name -> !name.isEmpty()).count(), edits.size());
        String text = new Fix("", edits.stream().flatMap(edit -> edit.edits().stream()).toList()).applied();
        Map<String, String> cases = new HashMap<>();
        Samples.text(text.replace("uses HarbourBench", "")).procedure().faults().forEach(fault ->
                cases.put(fault.name().text(), fault.cases().orElseThrow().value().toString()));
        drawn.forEach((name, count) -> {
            if (!name.isEmpty()) {
                int stated = PROCEDURE.faults().stream().filter(fault -> fault.name().text().equals(name)).findFirst().orElseThrow()
                        .cases().orElseThrow().value().toDecimal(0).intValue();
                assertEquals(String.valueOf(stated + count), cases.get(name), name);
            }
        });
        // every step of the simulated bench takes 50 s: one that states 12 min, and was visited often, takes less
        assertTrue(TallyEdits.takes(tally).stream().anyMatch(edit -> edit.title().startsWith("ReplaceHead: takes 50 s, the median of ")),
                TallyEdits.takes(tally).stream().map(Fix::title).toList().toString());
        assertTrue(TallyEdits.takes(tally).stream().noneMatch(edit -> edit.title().startsWith("SeeIt")), "50 s is near enough to 1 min");
    }

    @Test
    void should_refuse_what_is_changed_damaged_or_of_another_text() {
        JsonObject good = records(new TreeMap<>()).get(0);
        assertRefused(good, record -> record.addProperty("$schema", "urn:other"), "it is no record of a walk");
        assertRefused(good, record -> record.getAsJsonObject("procedure").addProperty("id", "Other"), "it is of Other, and not of OllenbyFaintLabels");
        assertRefused(good, record -> record.getAsJsonObject("procedure").getAsJsonObject("revision").addProperty("number", 6),
                "it is of revision 6, and the text is revision 7");
        assertRefused(good, record -> record.getAsJsonObject("procedure").addProperty("digest", "sha256:" + "0".repeat(64)),
                "it was made from another text of the same revision");
        String damaged = "it does not fit the steps of its procedure: it was changed or damaged";
        assertRefused(good, record -> record.addProperty("conclusion", "HeadCleaned2"), damaged);
        assertRefused(good, record -> record.getAsJsonArray("steps").remove(1), damaged);
        assertRefused(good, record -> record.getAsJsonArray("steps").get(0).getAsJsonObject().addProperty("seconds", -1), damaged);
        assertRefused(good, record -> record.getAsJsonArray("steps").get(0).getAsJsonObject().addProperty("seconds", 1e300), damaged);
        assertRefused(good, record -> record.getAsJsonArray("steps").get(0).getAsJsonObject().add("outcome", new JsonArray()), damaged);
        assertRefused(good, record -> record.addProperty("id", "../../etc/passwd"), damaged);
        assertRefused(good, record -> record.addProperty("begun", "2026-99-99T99:99:99Z"), damaged);
        assertRefused(good, record -> record.remove("steps"), damaged);
        for (String text : List.of("", "null", "[]", "1", "\"x\"", "{}")) {
            assertTrue(refused(text).startsWith("it is no") , text + ": " + refused(text));
        }
        for (String text : List.of("{", "{\"a\":}", "[".repeat(100_000), "{\"a\":".repeat(100_000), "\u0000", good + "x")) {
            assertEquals("it is not JSON, or it is damaged", refused(text));
        }
    }

    private static void assertRefused(JsonObject good, Consumer<JsonObject> way, String sentence) {
        JsonObject record = good.deepCopy();
        way.accept(record);
        assertEquals(sentence, refused(record.toString()));
    }

    private static String refused(String text) {
        return assertThrows(RecordRefused.class, () -> RecordFile.read(text, PROCEDURE)).getMessage();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Exploration;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.SafetyNeeds;
import org.faultwright.analysis.time.TimeToGo;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.analysis.walk.TimeAhead;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The walk of the page, which knows only the tree, the walk in Java, which knows only the procedure, and the proofs, which know
 * every state there can be: three hands, held against each other move by move.
 */
class WalkAgreementTest {
    private static final int WALKS_EACH = 125;
    private static final int LONGEST = 400;
    private static final Map<Step, Optional<ReadingEntry>> ENTRIES = new IdentityHashMap<>();

    static Stream<Path> demos() {
        return Samples.demos().stream();
    }

    @Test
    void should_walk_a_thousand_walks() {
        assertTrue(Samples.demos().size() * WALKS_EACH >= 1000);
    }

    @ParameterizedTest
    @MethodSource("demos")
    void should_agree_move_by_move(Path demo) {
        Publication publication = Samples.demo(demo);
        String tree = Samples.string("tree-json", publication);
        Proofs proofs = new Proofs(publication.procedure());
        Suspects suspects = Suspects.of(publication.procedure());
        Random random = new Random(20260926);
        Set<String> conclusions = new TreeSet<>();
        try (WalkScript script = new WalkScript()) {
            for (int i = 0; i < WALKS_EACH; i++) {
                conclusions.add(walk(publication.procedure(), suspects, script, tree, random, proofs));
            }
        }
        assertTrue(conclusions.size() > 2, conclusions.toString());
        assertTrue(proofs.met.size() > 50, "only " + proofs.met.size() + " states met");
    }

    /** Studied once: it is asked for at every visit. */
    private static Optional<ReadingEntry> entry(Procedure procedure, Step step) {
        return ENTRIES.computeIfAbsent(step, one -> ReadingEntry.of(procedure, one));
    }

    private static String walk(Procedure procedure, Suspects suspects, WalkScript script, String tree, Random random, Proofs proofs) {
        Walk walk = Walk.start(procedure).orElseThrow();
        TimeAhead ahead = TimeAhead.of(procedure);
        JsonObject told = script.start(tree);
        for (int moves = 0; !walk.isEnd(); moves++) {
            assertTrue(moves < LONGEST, "no end: " + walk.label());
            assertSame(walk, suspects, ahead, told);
            proofs.hold(walk);
            if (walk.canEnter()) {
                walk = walk.entered();
                told = script.enter();
            } else {
                Step step = walk.step();
                Optional<String> typed = reading(procedure, walk, script, random);
                Optional<ReadingEntry> entry = entry(procedure, step);
                Optional<Exact> base = step instanceof Step.Calculate ? walk.computed() : typed.map(text -> entry.orElseThrow().toBase(Exact.of(text)));
                Optional<Outcome> judged = typed.isPresent() || step instanceof Step.Calculate && base.isPresent()
                        ? judged(entry.orElseThrow(), step, base.orElseThrow(), typed.orElseGet(calculated(told)), script) : Optional.empty();
                Outcome outcome = judged.orElseGet(() -> step.outcomes().get(random.nextInt(step.outcomes().size())));
                Optional<String> given = typed.or(() -> base.map(value -> calculated(value, entry.orElseThrow())));
                walk = walk.take(outcome, base);
                told = script.take(outcome.key(), given);
            }
        }
        assertSame(walk, suspects, ahead, told);
        proofs.hold(walk);
        return walk.label();
    }

    private static Supplier<String> calculated(JsonObject told) {
        return () -> told.get("calculated").getAsString();
    }

    /** In the unit of the entry, as both write it. */
    private static String calculated(Exact base, ReadingEntry entry) {
        return entry.fromBase(base).toFraction();
    }

    /** Both name the same outcome, and both or neither call it doubtful. */
    private static Optional<Outcome> judged(ReadingEntry entry, Step step, Exact base, String text, WalkScript script) {
        ReadingEntry.Judged ours = entry.judge(step, base);
        JsonObject theirs = script.judge(text);
        String words = step.name() + " " + text;
        assertEquals(ours.outcome().map(Outcome::key), Optional.ofNullable(theirs.get("outcome")).map(JsonElement::getAsString), words);
        assertEquals(ours.doubtful(), theirs.get("doubtful").getAsBoolean(), words);
        return ours.outcome();
    }

    /** On an end of a band, or next to it: there the two part first if they part at all. */
    private static Optional<String> reading(Procedure procedure, Walk walk, WalkScript script, Random random) {
        Optional<ReadingEntry> entry = walk.step() instanceof Step.Measure ? entry(procedure, walk.step()) : Optional.empty();
        if (entry.isEmpty() || random.nextInt(10) == 0) {
            return Optional.empty();
        }
        List<Exact> ends = Stream.concat(entry.get().bands().stream().map(ReadingEntry.Band::values), entry.get().doubtful().stream())
                .flatMap(values -> Stream.of(values.lower(), values.upper())).flatMap(Optional::stream).map(Bound::value)
                .map(entry.get()::fromBase).toList();
        Exact near = ends.isEmpty() ? Exact.of(random.nextInt(20)) : ends.get(random.nextInt(ends.size()));
        Exact aside = List.of(Exact.ZERO, Exact.ratio(1, 1000), Exact.ratio(-1, 1000), Exact.of(2), Exact.of(-2)).get(random.nextInt(5));
        String text = Exact.of(near.plus(aside).toDecimal(6)).toString();
        String typed = " " + text.replace('.', ',') + " ";
        assertEquals(Exact.of(text), Exact.of(script.typed(typed)), "typed with a comma");
        assertEquals(Optional.of(Exact.of(text)), ReadingEntry.typed(typed), "typed with a comma");
        return Optional.of(text);
    }

    private static void assertSame(Walk walk, Suspects suspects, TimeAhead ahead, JsonObject told) {
        String at = walk.label();
        assertEquals(at, told.get("label").getAsString());
        assertEquals(walk.isEnd(), told.get("end").getAsBoolean(), at);
        assertEquals(walk.isLost(), told.get("lost").getAsBoolean(), at);
        assertEquals(walk.canEnter(), told.get("canEnter").getAsBoolean(), at);
        assertEquals(walk.due().stream().map(note -> note.name().text()).toList(), texts(told.get("due")), at);
        assertEquals(walk.read().stream().sorted().toList(), texts(told.get("read")), at);
        told.getAsJsonObject("setUp").entrySet().forEach(one ->
                assertEquals(walk.setUp().get(one.getKey()), one.getValue().getAsString(), at + " " + one.getKey()));
        assertTrue(told.getAsJsonObject("setUp").size() > 0, at);
        if (!walk.isLost()) {
            assertEquals(walk.unmet().stream().map(need -> need.condition().text() + " " + need.value().text()).toList(), texts(told.get("unmet")), at);
        }
        assertEquals(walk.step().outcomes().stream().map(walk::taken).toList(),
                told.getAsJsonArray("taken").asList().stream().map(JsonElement::getAsInt).toList(), at);
        TimeToGo.Range toGo = ahead.from(walk);
        assertEquals(toGo.least().doubleValue(), told.getAsJsonObject("toGo").get("least").getAsDouble(), 1e-6, at);
        assertEquals(toGo.most().isPresent(), told.getAsJsonObject("toGo").has("most"), at);
        toGo.most().ifPresent(most -> assertEquals(most.doubleValue(), told.getAsJsonObject("toGo").get("most").getAsDouble(), 1e-6, at));
        assertEquals(walk.seconds().doubleValue(), told.get("seconds").getAsDouble(), 1e-9, at);
        Optional<Exact> computed = walk.computed();
        assertEquals(computed.isPresent(), told.has("calculated"), at);
        computed.ifPresent(value -> assertEquals(entry(walk.procedure(), walk.step()).orElseThrow().fromBase(value),
                fraction(told.get("calculated").getAsString()), at));
        Map<String, Double> ours = new TreeMap<>();
        suspects.after(walk.evidence()).forEach(one -> ours.put(one.fault().name().text(), one.share()));
        Map<String, JsonElement> theirs = new TreeMap<>(told.getAsJsonObject("suspects").asMap());
        assertEquals(ours.keySet(), theirs.keySet(), at);
        ours.forEach((fault, share) -> assertEquals(share, theirs.get(fault).getAsDouble(), 1e-12, at + " " + fault));
    }

    private static Exact fraction(String text) {
        String[] parts = text.split("/");
        return Exact.of(parts[0]).dividedBy(Exact.of(parts[1]));
    }

    private static List<String> texts(JsonElement array) {
        return array.getAsJsonArray().asList().stream().map(JsonElement::getAsString).toList();
    }

    /** What the check knows of every state that there can be. */
    private static final class Proofs {
        private final Procedure procedure;
        private final Map<String, Set<Map<String, String>>> states = new HashMap<>();
        private final Map<String, List<BenchStates.State>> bench = new HashMap<>();
        private final SafetyNeeds needs;
        private final ProcedurePaths paths;
        private final Set<String> met = new HashSet<>();

        Proofs(Procedure procedure) {
            this.procedure = procedure;
            this.paths = ProcedurePaths.of(new Subject(procedure, Optional.empty())).orElseThrow();
            this.needs = new SafetyNeeds(paths);
            List<Condition> conditions = procedure.scope().conditions().stream().filter(one -> !one.values().isEmpty()).toList();
            Exploration all = Exploration.of(paths.map(), conditions);
            assertTrue(all.isComplete() && all.countsRepeats());
            for (int state = 0; state < all.size(); state++) {
                int number = state;
                if (all.place(state).isStep()) {
                    states.computeIfAbsent(all.place(state).label(), none -> new HashSet<>()).add(conditions.stream().collect(
                            Collectors.toMap(one -> one.name().text(), one -> all.value(number, one).text())));
                }
            }
            paths.bench().all().filter(state -> state.place().isStep())
                    .forEach(state -> bench.computeIfAbsent(state.place().label(), none -> new ArrayList<>()).add(state));
        }

        /** The state is one that the check says can be, and of each hazard that the step needs to know of somebody was told. */
        void hold(Walk walk) {
            assertTrue(states.getOrDefault(walk.label(), Set.of()).contains(walk.setUp()), walk.label() + " in " + walk.setUp());
            met.add(walk.label() + walk.setUp());
            Set<Hazard> told = Stream.concat(walk.read().stream().flatMap(name -> procedure.scope().notes().stream()
                    .filter(note -> note.name().text().equals(name))), walk.due().stream()).map(Note::covers).flatMap(List::stream)
                    .map(Written::value).collect(Collectors.toSet());
            List<BenchStates.State> here = bench.getOrDefault(walk.label(), List.of()).stream().filter(state -> Stream.concat(
                    paths.bench().live().stream(), paths.bench().charged().stream()).allMatch(condition ->
                            state.value(condition).text().equals(walk.setUp().get(condition.name().text())))).toList();
            assertTrue(!here.isEmpty(), walk.label());
            assertTrue(here.stream().anyMatch(state -> needs.at(state).stream().filter(need -> !need.advised())
                    .allMatch(need -> told.contains(need.hazard()))), () -> walk.label() + " was told of " + told + " alone");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"3,1", "3.1", "+3", "-3", "\u22123", "1 000,5", "1'000", ".5", "5.", "", " ", "abc", "1e999", "1,2,3", "--1", "0x10", "NaN", "1..2",
        "3 V", "OL", "\u0663"})
    void should_take_the_same_words_for_numbers(String text) {
        try (WalkScript script = new WalkScript()) {
            String theirs = script.typed(text);
            assertEquals(theirs.isEmpty() ? Optional.empty() : Optional.of(Exact.of(theirs)), ReadingEntry.typed(text));
        }
    }

    @Test
    void should_tell_alike_what_must_be_set_first() {
        Publication publication = Samples.text("""
                procedure P "P"
                condition Supply "Supply" { off, on } starts off ends off
                condition Lid "Lid" { closed, open } starts closed
                condition Lamp "Lamp" { dark, lit } becomes lit when Supply on
                routine Inside "Inside" {
                    exits out
                    do Press "Press" { needs Lid closed, Lamp dark then -> out }
                }
                do First "First" { needs Supply on, Lid closed then -> Second }
                perform Second "Second" by Inside { needs Lid open out -> Third }
                do Third "Third" { needs Supply on, Lid closed, Gone far sets Supply off then -> Fourth }
                do Fourth "Fourth" { needs Supply off, Lid open then -> Good }
                conclude Good "Good" { finds nothing needs Supply on }
                """);
        Suspects suspects = Suspects.of(publication.procedure());
        TimeAhead ahead = TimeAhead.of(publication.procedure());
        Walk walk = Walk.start(publication.procedure()).orElseThrow();
        List<String> unmet = new ArrayList<>();
        try (WalkScript script = new WalkScript()) {
            JsonObject told = script.start(Samples.string("tree-json", publication));
            while (!walk.isEnd()) {
                assertSame(walk, suspects, ahead, told);
                String at = walk.label() + ":";
                walk.unmet().forEach(need -> unmet.add(at + need.condition().text()));
                if (walk.canEnter()) {
                    walk = walk.entered();
                    told = script.enter();
                } else {
                    Outcome only = walk.step().outcomes().get(0);
                    walk = walk.take(only);
                    told = script.take(only.key(), Optional.empty());
                }
            }
            assertSame(walk, suspects, ahead, told);
        }
        assertEquals(List.of("First:Supply", "Second:Lid", "Second/Press:Lid", "Second/Press:Lamp", "Fourth:Lid"), unmet);
        assertEquals(List.of("Supply"), walk.unmet().stream().map(need -> need.condition().text()).toList());
    }

    /** Of two results that apply the first one written counts, whichever that is. */
    @Test
    void should_judge_a_table_by_the_order_of_its_results() {
        Publication publication = Samples.text("""
                procedure P "P" equipment "E"
                point A "A" carries up to 60 V dc
                point B "B" carries up to 60 V dc
                measure Rails "Rails" {
                    dc voltage
                    at A expects 5 V +/- 5 %
                    at B expects 5 V +/- 5 %
                    any outside -> Other
                    at A outside -> Bad
                    all within -> Good
                }
                conclude Good "Good" { finds nothing }
                conclude Bad "Bad" { finds nothing }
                conclude Other "Other" { finds nothing }
                """);
        try (WalkScript script = new WalkScript()) {
            script.start(Samples.string("tree-json", publication));
            assertEquals("any outside", script.judgeTable("[\"6\", \"5\"]").get("outcome").getAsString());
            assertEquals("all within", script.judgeTable("[\"5\", \"5\"]").get("outcome").getAsString());
        }
    }

    @Test
    void should_judge_tables_alike() {
        Publication publication = Samples.text("""
                procedure P "P" equipment "E"
                revision 1 dated 2026-01-01
                point A "A" carries up to 60 V dc
                point B "B" carries up to 60 V dc
                point C "C" carries up to 60 V dc
                measure Rails "Rails" {
                    dc voltage
                    at A expects 5 V +/- 5 %
                    at B expects at most 50 mV
                    at C expects 12 V .. 13 V
                    all within -> Good
                    at B outside -> Bad
                    any outside -> Other
                }
                conclude Good "Good" { finds nothing }
                conclude Bad "Bad" { finds nothing }
                conclude Other "Other" { finds nothing }
                """);
        Procedure procedure = publication.procedure();
        Step.Measure table = (Step.Measure) procedure.steps().get(0);
        List<String> values = List.of("5", "5.25", "5.251", "-5", "50", "50.1", "-51", "12", "13", "11.9", "OL");
        Set<String> outcomes = new TreeSet<>();
        try (WalkScript script = new WalkScript()) {
            script.start(Samples.string("tree-json", publication));
            for (int i = 0; i < values.size() * values.size() * values.size(); i++) {
                List<String> typed = List.of(values.get(i % 11), values.get(i / 11 % 11), values.get(i / 121));
                List<Optional<Exact>> base = IntStream.range(0, 3).mapToObj(row -> ReadingEntry.typed(typed.get(row)).map(value ->
                        ReadingEntry.ofRow(procedure, table.readings().get(row)).orElseThrow().unit().toBase(value))).toList();
                Optional<String> ours = ReadingEntry.judgeTable(procedure, table, base).map(Outcome::key);
                assertEquals(ours, Optional.ofNullable(script.judgeTable(new Gson().toJson(typed)).get("outcome")).map(JsonElement::getAsString), typed.toString());
                ours.ifPresent(outcomes::add);
            }
        }
        assertEquals(Set.of("all within", "at B outside", "any outside"), outcomes);
    }

    /** A move: into a routine, or a result. */
    private record Way(Walk walk, List<String> moves) {
    }

    @ParameterizedTest
    @MethodSource("demos")
    void should_come_to_every_conclusion(Path demo) {
        Publication publication = Samples.demo(demo);
        Map<String, List<String>> found = new TreeMap<>();
        Set<Object> seen = new HashSet<>();
        Deque<Way> open = new ArrayDeque<>(List.of(new Way(Walk.start(publication.procedure()).orElseThrow(), List.of())));
        while (!open.isEmpty()) {
            Way way = open.remove();
            if (way.walk().isEnd()) {
                found.putIfAbsent(way.walk().label(), way.moves());
            } else if (seen.add(List.of(way.walk().label(), way.walk().setUp()))) {
                next(way).forEach(open::add);
            }
        }
        assertEquals(publication.procedure().steps().stream().filter(Step.Conclude.class::isInstance).map(step -> step.name().text())
                .collect(Collectors.toCollection(TreeSet::new)), found.keySet());
        String tree = Samples.string("tree-json", publication);
        try (WalkScript script = new WalkScript()) {
            found.forEach((conclusion, moves) -> {
                JsonObject told = script.start(tree);
                for (String move : moves) {
                    told = move.isEmpty() ? script.enter() : script.take(move, Optional.empty());
                }
                assertEquals(conclusion, told.get("label").getAsString());
                assertTrue(told.get("end").getAsBoolean());
            });
        }
    }

    private static List<Way> next(Way way) {
        Function<String, List<String>> and = move -> Stream.concat(way.moves().stream(), Stream.of(move)).toList();
        return way.walk().canEnter() ? List.of(new Way(way.walk().entered(), and.apply("")))
                : way.walk().step().outcomes().stream().map(outcome -> new Way(way.walk().take(outcome), and.apply(outcome.key()))).toList();
    }
}

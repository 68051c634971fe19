/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.compare.Difference.Kind;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ProcedureComparisonTest {
    private static final String TEXT = """
            procedure Timer "Kitchen timer" equipment "Ednor K2" revision 3 released by "R. Castellane" dated 2026-01-10
            complaints "silent"
            condition Supply { off, on } live when on starts off ends off
            point Rail "C7, plus side" carries up to 6 V
            note Hot danger { covers heat, shock hazard "It gets hot." consequence "Burns." avoid "Wait a minute." }
            indicator Lamp "Red lamp" { 2 blinks means "Relay" 3 blinks means "Sensor" source "Sheet 1" }
            fault Relay "Relay stuck" { cases 3 shows Look dark, Volts below }
            begin at Look
            check Look "Is the lamp dark?" { confirms complaint needs Supply off takes 1 min dark -> Volts lit -> Nothing }
            measure Volts "Rail" { dc voltage at Rail expects 5 V +/- 5 % source "Sheet 1" notes Hot
                below -> RelayBad within -> Nothing above -> Nothing }
            measure Load "Load" { dc voltage at Rail under 100 mV -> RelayBad at least 100 mV -> Nothing }
            conclude RelayBad "Relay" { finds Relay }
            conclude Nothing "Nothing found" { finds nothing }
            example "One" of Relay { Look dark, Volts 4.1 V ends at RelayBad within 3 min }
            """;

    private static List<Difference> compared(String was, String now) {
        return ProcedureComparison.of(Texts.procedure(was), Texts.procedure(now));
    }

    /** Each edit of the text with what a reader is told. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "+/- 5 % | +/- 8 % | LIMITS | Volts: limit: 5 V +/- 5 % → 5 V +/- 8 % (wider: 4.6 V to 5.4 V, was 4.75 V to 5.25 V)",
        "+/- 5 % | +/- 2 % | LIMITS | Volts: limit: 5 V +/- 5 % → 5 V +/- 2 % (narrower: 4.9 V to 5.1 V, was 4.75 V to 5.25 V)",
        "expects 5 V | expects 6 V | LIMITS | Volts: limit: 5 V +/- 5 % → 6 V +/- 5 % (moved: 5.7 V to 6.3 V, was 4.75 V to 5.25 V)",
        "expects 5 V | expects 5000 mV | LIMITS | Volts: limit: 5 V +/- 5 % → 5000 mV +/- 5 % (the same value)",
        "Sheet 1\" notes | Sheet 2\" notes | LIMITS | Volts: source: Sheet 1 → Sheet 2",
        "dc voltage at Rail expects | ac voltage rms at Rail expects | LIMITS | Volts: quantity: dc voltage → ac voltage rms",
        "within -> Nothing | within -> RelayBad | OUTCOMES | Volts within: leads to: Nothing → RelayBad",
        "lit -> Nothing | lit -> Nothing at most 2 times, else RelayBad | OUTCOMES | Look lit: bound: – → at most 2 times, else RelayBad",
        "lit -> Nothing | lit -> Nothing odd -> RelayBad | OUTCOMES | Look outcome odd: – → leads to RelayBad",
        "notes Hot | hint \"Look\" notes Hot | STEPS | Volts: hint: – → Look",
        " notes Hot | | PROTECTION | Volts: notes read: Hot → –",
        "Wait a minute. | Wait a second. | PROTECTION | Hot: avoid: Wait a minute. → Wait a second.",
        "note Hot danger | note Hot caution | PROTECTION | Hot: signal word: danger → caution",
        "covers heat, shock | covers heat | PROTECTION | Hot: covers: heat, shock → heat",
        "live when on | | PROTECTION | Supply: live: on → –",
        "needs Supply off | | PROTECTION | Look: needs: Supply off → –",
        "up to 6 V | up to 4 V | PROTECTION | Rail: voltage carried: up to 6 V, dc voltage → up to 4 V, dc voltage",
        "up to 6 V | up to 9 V | BENCH | Rail: voltage carried: up to 6 V, dc voltage → up to 9 V, dc voltage",
        "needs Supply off | needs Supply on | PROTECTION | Look: needs: Supply off → Supply on",
        "ends off | ends on | PROTECTION | Supply: ends: off → on",
        "confirms complaint | | PROTECTION | Look: confirms the complaint: yes → –",
        "cases 3 | cases 4 | FAULTS | Relay: cases: 3 → 4",
        "shows Look dark | shows Look lit | FAULTS | Relay shows at Look: dark → lit",
        "begin at | fault Fuse \"Fuse blown\" { cases 1 } begin at | FAULTS | Fault Fuse: – → Fuse blown",
        "Volts 4.1 V | Volts 4.2 V | EXAMPLES | One shows at Volts: 4.1 V → 4.2 V",
        "Ednor K2 | Ednor K3 | RECORD | equipment: Ednor K2 → Ednor K3",
        "under 100 mV -> RelayBad at least 100 mV | under 90 mV -> RelayBad at least 90 mV | LIMITS | Load under 90 mV: limit: under 100 mV → under 90 mV (narrower: under 90 mV, was under 100 mV)",
        "takes 1 min | takes 60 s | STEPS | Look: time: 1 min → 60 s (the same value)",
        "C7, plus side | C8, plus side | BENCH | Rail: words: C7, plus side → C8, plus side",
    })
    void should_tell_what_changed(String from, String to, Kind kind, String sentence) {
        assertTrue(TEXT.contains(from), from);
        List<Difference> found = compared(TEXT, TEXT.replace(from, to == null ? "" : to));

        assertTrue(found.stream().anyMatch(one -> one.kind() == kind && one.toString().equals(sentence)), found::toString);
    }

    @Test
    void should_tell_the_new_and_the_gone_the_other_way_round() {
        String more = TEXT.replace("begin at", "fault Fuse \"Fuse blown\" { cases 1 } begin at");

        assertEquals(List.of(Kind.FAULTS + " Fault Fuse: Fuse blown → –"), told(compared(more, TEXT)));
    }

    @Test
    void should_know_a_step_that_has_only_another_name() {
        assertEquals(List.of(Kind.STEPS + " Step SeeIt: name: Look → SeeIt"), told(compared(TEXT, TEXT.replace("Look", "SeeIt"))));
    }

    /** Each edit of the example in one line, not as one example gone and another come. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "example \"One\" of | example \"First\" of | Example First: name: One → First",
        "example \"One\" of Relay { Look dark, Volts 4.1 V | example of Relay { Look dark, Volts 4.2 V | A case of \"Relay\", \"Look\" shows \"dark\", \"Volts\" shows \"4.2 V\", ends at \"RelayBad\" shows at Volts: 4.1 V → 4.2 V",
        "example \"One\" of Relay { Look dark, Volts 4.1 V ends at RelayBad | example of Relay { Look dark, Volts 4.1 V ends at Nothing | A case of \"Relay\", \"Look\" shows \"dark\", \"Volts\" shows \"4.1 V\", ends at \"Nothing\": ends at: RelayBad → Nothing",
    })
    void should_know_an_example_that_is_called_otherwise(String from, String to, String sentence) {
        assertTrue(TEXT.contains(from), from);
        assertEquals(List.of(Kind.EXAMPLES + " " + sentence), told(compared(TEXT, TEXT.replace(from, to))));
    }

    /** Of two cases of one fault with one end each is the one that it has most in common with; what has nothing in common is gone and new. */
    @Test
    void should_tell_examples_apart_that_end_alike() {
        String one = "example of Relay { Look dark, Volts 4.1 V ends at RelayBad }";
        String two = "example of Relay { Look dark, Volts 4.2 V, Load 50 mV ends at RelayBad }";
        String before = TEXT + two;
        String after = TEXT.replaceAll("example \"One\" .*", two.replace("50 mV", "60 mV") + "\n" + one.replace("4.1 V", "4.15 V"));
        List<String> found = told(compared(before, after));
        assertEquals(3, found.size(), found::toString);
        assertTrue(found.stream().anyMatch(line -> line.endsWith("shows at Load: 50 mV → 60 mV")), found::toString);
        assertTrue(found.stream().anyMatch(line -> line.endsWith("shows at Volts: 4.1 V → 4.15 V")), found::toString);
        List<String> other = told(compared(TEXT, TEXT.replaceAll("example \"One\" .*", "example \"Two\" { Look lit ends at Nothing }")));
        assertEquals(2, other.size(), other::toString);
    }

    /** The first step is where it begins, said or not; another first step is another beginning. */
    @Test
    void should_know_where_it_begins_when_that_goes_without_saying() {
        String unsaid = TEXT.replace("begin at Look\n", "");
        String load = TEXT.lines().filter(line -> line.startsWith("measure Load")).findFirst().orElseThrow();

        assertEquals(List.of(), compared(TEXT, unsaid));
        assertEquals(List.of(), compared(unsaid, TEXT));
        assertEquals(List.of(Kind.OUTCOMES + " begins at: Look → Load"),
                told(compared(unsaid, unsaid.replace(load + "\n", "").replace("check Look", load + "\ncheck Look"))));
    }

    /** The steps that close the unit before a conclusion are all alike, and nobody wrote them: what is called otherwise is the conclusion. */
    @Test
    void should_know_closing_steps_before_conclusions_that_have_only_other_names() throws IOException {
        Path demo = Path.of("..", "..", "procedures-demo", "QuerrinRecorderDropsOut.procedure");
        String today = Files.readString(demo);
        String earlier = today.replace("conclude FaultOutsideThisProcedure {", "conclude NotUnderstood \"Fault outside this procedure\" {")
                .replace("FaultOutsideThisProcedure", "NotUnderstood")
                .replace("conclude FaultNotProvoked {", "conclude NotProvoked \"Fault not provoked\" {").replace("FaultNotProvoked", "NotProvoked");

        assertEquals(List.of(Kind.STEPS + " Step FaultNotProvoked: name: NotProvoked → FaultNotProvoked",
                Kind.STEPS + " Step FaultOutsideThisProcedure: name: NotUnderstood → FaultOutsideThisProcedure"),
                told(ProcedureComparison.of((Procedure) ProcedureReader.overFiles().read(new SourceText(demo.toString(), earlier)),
                        (Procedure) ProcedureReader.overFiles().read(demo))));
    }

    private static List<String> told(List<Difference> found) {
        return found.stream().map(one -> one.kind() + " " + one).toList();
    }

    /** A reader who chooses a line is taken to these words of the later text, and to the line they stand on. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "+/- 5 % | +/- 8 % | 5 V +/- 8 % | measure Volts",
        "within -> Nothing | within -> RelayBad | RelayBad | below -> RelayBad within",
        "up to 6 V | up to 9 V | Rail | point Rail",
        " notes Hot | | Volts | measure Volts",
        "Wait a minute. | Wait a second. | Hot | note Hot",
        "lit -> Nothing | lit -> Nothing odd -> RelayBad | odd | check Look",
        "begin at Look | begin at Volts | Volts | begin at",
        "cases 3 | cases 4 | 4 | fault Relay",
        "Volts 4.1 V ends | Volts 4.2 V ends | Volts 4.2 V | example",
    })
    void should_say_where_it_stands_in_the_later_text(String from, String to, String words, String line) {
        assertTrue(TEXT.contains(from), from);
        String now = TEXT.replace(from, to == null ? "" : to);

        SourceRange at = compared(TEXT, now).get(0).at().orElseThrow();

        assertTrue(at.text().contains(words) && at.length() <= words.length() + 20, at.text());
        assertTrue(now.lines().skip(at.line() - 1).findFirst().orElseThrow().contains(line), at.toString());
    }

    @Test
    void should_have_no_place_for_what_is_gone_with_all_it_belonged_to() {
        String more = TEXT.replace("begin at", "fault Fuse \"Fuse blown\" { cases 1 } begin at");

        assertEquals(Optional.empty(), compared(more, TEXT).get(0).at());
    }

    @Test
    void should_say_nothing_of_order_layout_and_comments() {
        String load = TEXT.lines().filter(line -> line.startsWith("measure Load")).findFirst().orElseThrow();
        String moved = TEXT.replace(load + "\n", "").replace("conclude Nothing", load + "\nconclude Nothing") + "// a remark\n";

        assertEquals(List.of(), compared(TEXT, moved.replace("expects 5 V", "expects\n  5 V")));
    }

    @Test
    void should_know_a_step_that_moved_into_a_routine() {
        String routine = "routine Try \"Try it\" { exits good begin at Press do Press \"Press it\" { takes 10 s then -> good } }\n";
        String flat = TEXT.replace("dark -> Volts", "dark -> Press").replace("measure Volts", "do Press \"Press it\" { takes 20 s then -> Volts }\nmeasure Volts");
        String inside = TEXT.replace("dark -> Volts", "dark -> TryIt").replace("begin at Look", routine + "begin at Look")
                .replace("measure Volts", "perform TryIt \"Try\" by Try { good -> Volts }\nmeasure Volts");

        List<String> found = compared(flat, inside).stream().map(Difference::toString).toList();

        assertTrue(found.contains("Step Press: moved: the procedure → routine Try"), found::toString);
        assertTrue(found.contains("Press: time: 20 s → 10 s"), found::toString);
    }

    /** A change of a library counts where the procedure uses what has changed, and nowhere else. */
    @Test
    void should_look_into_what_is_used_of_a_library() {
        String uses = TEXT.replace("complaints", "uses House complaints").replaceAll("note Hot .*\\n", "");
        String house = "library House \"House\" note Hot caution { covers heat hazard \"Hot.\" consequence \"Burns.\" avoid \"Wait.\" }\n"
                + "note Cold caution { covers chemical hazard \"Cold.\" consequence \"Burns.\" avoid \"Gloves.\" }";

        assertEquals(List.of(), ProcedureComparison.of(using(uses, house), using(uses, house.replace("Gloves", "Mittens"))));
        assertEquals(List.of("Hot: avoid: Wait. → Hurry."), ProcedureComparison.of(using(uses, house), using(uses, house.replace("Wait", "Hurry")))
                .stream().map(Difference::toString).toList());
    }

    private static Procedure using(String text, String library) {
        return (Procedure) new ProcedureReader((name, from) -> Optional.of(new SourceText("House.procedure", library)))
                .read(new SourceText("Test.procedure", text));
    }

    static Stream<Path> demos() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("..", "..", "procedures-demo"))) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void should_find_no_difference_in_a_text_read_twice(Path file) throws IOException {
        assertEquals(List.of(), ProcedureComparison.of((Procedure) ProcedureReader.overFiles().read(file),
                (Procedure) ProcedureReader.overFiles().read(file)));
    }

    /** Whatever is broken, the comparison ends and says so. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"procedure", "procedure Timer check", "procedure Timer check A { -> }", "procedure Timer begin at Look measure M { expects 5 }",
        "procedure Timer fault F { shows } example \"x\" { }", "procedure Timer condition C { } point P carries up to 5"})
    void should_bear_a_text_of_which_little_can_be_read(String broken) {
        assertTrue(compared(TEXT, broken).size() > 5);
        assertTrue(compared(broken, TEXT).size() > 5);
        assertEquals(List.of(), compared(broken, broken));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.compare.Difference.Kind;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every clause that protects is told under the first heading when it goes or says less; what does not protect is told elsewhere. */
class ProtectionTest {
    private static final Map<String, String> DEMO = demo();
    private static final Map<String, Procedure> PROCEDURES = DEMO.entrySet().stream().filter(entry -> isProcedure(entry.getValue()))
            .collect(Collectors.toMap(Map.Entry::getKey, entry -> read(entry.getKey(), DEMO)));

    /** A procedure that does not say where its charge is proved has that of the library. */
    private static final String WITH_THE_POINT_OF_THE_LIBRARY = "TarnholmWeakFlash";

    /** The texts of the demo and of its library, by their names. */
    private static Map<String, String> demo() {
        Map<String, String> texts = new TreeMap<>();
        for (Path folder : List.of(Path.of("..", "..", "procedures-demo"), Path.of("..", "..", "procedures-demo", "library"))) {
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).toList()) {
                    texts.put(file.getFileName().toString().replace(".procedure", ""), Files.readString(file));
                }
            } catch (IOException missing) {
                throw new UncheckedIOException(missing);
            }
        }
        texts.computeIfPresent(WITH_THE_POINT_OF_THE_LIBRARY, (name, text) -> text.replaceFirst("(?s)point Reservoir .*?(?=\\npoint |\\n//|\\n\\n)", ""));
        return Map.copyOf(texts);
    }

    private static Procedure read(String name, Map<String, String> texts) {
        return (Procedure) new ProcedureReader((library, from) -> Optional.ofNullable(texts.get(library))
                .map(text -> new SourceText(library + ".procedure", text))).read(new SourceText(name + ".procedure", texts.get(name)));
    }

    private static boolean isProcedure(String text) {
        return text.lines().anyMatch(line -> line.startsWith("procedure "));
    }

    /** Of one text changed: what every procedure tells, one that uses the library too. */
    private static List<String> told(String changed, String text) {
        Map<String, String> texts = new TreeMap<>(DEMO);
        texts.put(changed, text);
        List<String> told = new ArrayList<>();
        PROCEDURES.forEach((name, own) -> {
            if (name.equals(changed) || !PROCEDURES.containsKey(changed)) {
                ProcedureComparison.of(own, read(name, texts)).stream().filter(one -> one.kind() == Kind.PROTECTION)
                        .map(Difference::toString).forEach(told::add);
            }
        });
        return told;
    }

    /** Each kind of clause at its first place in every text of the demo, taken out or turned. */
    @ParameterizedTest(name = "{0} → {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "(?m)^ +needs .*$ | `` | : needs: ",
        "(?m)^ +sets .*$ | `` | : sets: ",
        "(?m)^ +notes .*$ | `` | : notes read: ",
        "(?m)^ +handles .*$ | `` | : handles: ",
        "(?m)^ +hazards .*$ | `` | : hazards: ",
        "(?m)^ +confirms complaint$ | `` | : confirms the complaint: ",
        "(?m)^ +verifies repair$ | `` | : verifies the repair: ",
        "(?m)^ +erases .*$ | `` | : erases: ",
        "(?m)^ +repairs$ | `` | : repairs: ",
        "(?m)^ +remedy .*$ | `` | : remedies: ",
        "(?m)^ +tests .*$ | `` | : protective tests: ",
        "(?m)^ +tries .*$ | `` | : tried first: ",
        "(?m)^ +live because .*$ | `` | : live because: ",
        "(?m)^ +rated .*$ | `` | : rated: ",
        " rated 50 W | `` | : rated: ",
        " drains by 1 kohm | `` | : drains by: ",
        "(equipment \".*\") class I+ | $1 | equipment: protection class: ",
        "(?m)^ *closes by .*$ | `` | closes by: ",
        "(?m)^ +live when .*$ | `` | : live: ",
        "(?m)^ +charged when .*$ | `` | : charged: ",
        "(?m)^ +becomes .*$ | `` | : becomes: ",
        "(?m)^ +proved at .*$ | `` | : proved at: ",
        "(proved at Reservoir at most) 5 V | $1 50 V | : limit: at most 5 V",
        "(?m)^ +ends \\w+$ | `` | : ends: ",
        "starts present | starts absent | : starts: ",
        "(?m)^ +covers .*$ | `` | : covers: ",
        "(note \\w+) danger | $1 caution | : signal word: ",
        "(?m)^( +avoid \").*(\")$ | $1Mind.$2 | : avoid: ",
        "carries up to 400 V | carries up to 30 V | : voltage carried: ",
        "(?m)^ +category 2$ | `` | : category: ",
        "(point Reservoir \".*\") | $1 isolated | : isolated: ",
        " proves Charge absent | `` | : proves: ",
        "(gone +at most) 5 V | $1 50 V | gone: limit: ",
        "(passes at most) 0.3 ohm | $1 3 ohm | passes: limit: ",
        "(passes at least) 1 Mohm | $1 0.1 Mohm | passes: limit: ",
        "(passes at most) 3.5 mA | $1 35 mA | passes: limit: ",
        "(?m)^(condition Supply .*)$ | $1 may change live | : may change live: ",
    })
    void should_name_every_protective_clause_of_the_demo_that_goes_or_says_less(String clause, String instead, String words) {
        Pattern pattern = Pattern.compile(clause);
        int looked = 0;
        for (Map.Entry<String, String> text : DEMO.entrySet()) {
            Matcher found = pattern.matcher(text.getValue());
            if (found.find()) {
                StringBuilder changed = new StringBuilder(text.getValue().substring(0, found.start()));
                changed.append(Pattern.compile(clause).matcher(found.group()).replaceFirst(instead));
                changed.append(text.getValue().substring(found.end()));
                List<String> told = told(text.getKey(), changed.toString());
                assertTrue(told.stream().anyMatch(one -> one.contains(words)), text.getKey() + ", " + found.group().strip() + ": " + told);
                looked++;
            }
        }
        assertTrue(looked > 0, "the demo has no " + clause);
    }

    private static final String TEXT = """
            procedure Timer "Kitchen timer" equipment "Ednor K2" class I
            complaints "silent"
            condition Supply { off, on } live when on starts off ends off
            condition Charge { present, absent } charged when present proved at Rail, Bank at most 5 V starts present
            condition Lid { shut, open } starts shut
            instrument Meter "Hand meter" { dc voltage up to 600 V resolution 100 mV rated 600 V category 3 }
            point Rail "C7, plus side" carries up to 60 V dc stores 100 uF drained by 1 kohm hazards charge
            point Bank "C8" carries up to 400 V dc category 3
            point Plug "Plug" isolated when Supply off, Lid shut
            part Lead "Bleed lead" drains by 1 kohm rated 50 W
            note Hot danger { covers heat hazard "It gets hot." consequence "Burns." avoid "Wait a minute." }
            fault Relay "Relay stuck" { cases 3 shows Look dark remedy Swap hazards heat }
            begin at Look
            check Look "Is the lamp dark?" { confirms complaint takes 1 min dark -> Cool lit -> End }
            do Cool "Let it cool" { notes Hot wait 2 min sets Supply off then -> Try }
            do Try "Try the meter" { tries Meter then -> Prove }
            measure Prove "Read it" { dc voltage at Bank using Meter expects at most 5 V needs Supply off
                within -> Swap proves Charge absent outside -> End }
            do Swap "Fit a new relay" { repairs handles Lead tools "insulated driver" rated 1000 V, "brush" live because "it runs" then -> Test }
            measure Test "Bond" { resistance at Plug tests conductor passes at most 0.3 ohm -> End fails over 0.3 ohm -> End }
            conclude End "End" { finds Relay }
            """;

    private static List<Difference> compared(String from, String to) {
        assertTrue(TEXT.contains(from), from);
        return ProcedureComparison.of(Texts.procedure(TEXT), Texts.procedure(TEXT.replace(from, to == null ? "" : to)));
    }

    @ParameterizedTest(name = "{0} → {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "\"Ednor K2\" class I | \"Ednor K2\" | equipment: protection class: I → –",
        "class I | class II | equipment: protection class: I → II",
        "equipment \"Ednor K2\" class I | | equipment: Ednor K2, protection class I → –",
        "wait 2 min | | Cool: wait: 2 min → –",
        "wait 2 min | wait 90 s | Cool: wait: 2 min → 90 s",
        "tries Meter | | Try: tried first: Meter → –",
        "tests conductor | | Test: protective tests: conductor → –",
        "\"insulated driver\" rated 1000 V | \"insulated driver\" | Swap: rated: insulated driver, up to 1000 V → –",
        "repairs handles | handles | Swap: repairs: yes → –",
        "live because \"it runs\" | live because \"so it is\" | Swap: live because: it runs → so it is",
        "stores 100 uF | | Rail: stores: 100 uF → –",
        "stores 100 uF | stores 10 uF | Rail: stores: 100 uF → 10 uF",
        "drained by 1 kohm | drained by 100 ohm | Rail: drained by: 1 kohm → 100 ohm",
        "400 V dc category 3 | 400 V dc | Bank: category: 3 → –",
        "400 V dc category 3 | 400 V dc category 2 | Bank: category: 3 → 2",
        "600 V category 3 | 600 V | Meter: category: 3 → –",
        "isolated when Supply off, Lid shut | isolated when Supply off | Plug: isolated: when Supply off, Lid shut → when Supply off",
        "isolated when Supply off, Lid shut | isolated | Plug: isolated: when Supply off, Lid shut → always",
        "`part Lead \"Bleed lead\" drains` | `part Lead \"Bleed lead\" isolated drains` | Lead: isolated: – → always",
        "proved at Rail, Bank | proved at Rail, Bank, Plug | Charge: proved at: Rail, Bank → Rail, Bank, Plug",
        "remedy Swap hazards heat | remedy Swap | Relay: hazards: heat → –",
        "expects at most 5 V | expects at most 9 V | Prove: limit: at most 5 V → at most 9 V (wider: at most 9 V, was at most 5 V)",
        "takes 1 min dark | takes 1 min sets Charge absent dark | Look: sets: – → Charge absent",
        "dark -> Cool | dark -> Cool proves Charge absent | Look dark: proves: – → Charge absent",
    })
    void should_name_what_the_demo_lacks_too(String from, String to, String sentence) {
        List<Difference> found = compared(from, to);

        assertTrue(found.stream().anyMatch(one -> one.kind() == Kind.PROTECTION && one.toString().equals(sentence)), found::toString);
    }

    @Test
    void should_name_a_step_that_goes_with_its_protection_or_becomes_another() {
        String test = TEXT.lines().filter(line -> line.startsWith("measure Test")).findFirst().orElseThrow();

        assertTrue(compared(test, "do Test \"Bond\" { then -> End }").stream().anyMatch(one -> one.kind() == Kind.PROTECTION
                && one.toString().equals("Test: kind: measure → do (with its protective tests conductor)")));
        assertTrue(compared(test + "\n", "").stream().anyMatch(one -> one.kind() == Kind.PROTECTION && one.toString().equals("Step Test: Bond → – (with its protective tests conductor)")));
    }

    /** What protects more, and what has nothing to do with it. */
    @ParameterizedTest(name = "{0} → {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "takes 1 min dark | takes 2 min dark", "takes 1 min dark | takes 1 min hint \"Look\" dark", "takes 1 min dark | takes 1 min needs Supply off dark",
        "takes 1 min dark | takes 1 min notes Hot hazards heat dark", "takes 1 min dark | takes 1 min sets Lid shut dark",
        "takes 1 min dark | takes 1 min sets Supply on dark", "takes 1 min dark | takes 1 min tries Meter tests insulation dark",
        "takes 1 min dark | takes 1 min tools \"lamp\" rated 1000 V source \"Sheet\" dark", "wait 2 min | wait 3 min", "lit -> End | lit -> Cool",
        "`, \"brush\"` | ``", "stores 100 uF | stores 1 mF", "drained by 1 kohm | drained by 2 kohm", "drained by 1 kohm | ``",
        "carries up to 400 V dc | carries up to 500 V dc", "400 V dc category 3 | 400 V dc category 4", "hazards charge | hazards charge, shock",
        "isolated when Supply off, Lid shut | isolated when Supply off, Lid shut, Charge absent", "isolated when Supply off, Lid shut | ``",
        "proved at Rail, Bank | proved at Bank", "Bank at most 5 V | Bank at most 4 V", "expects at most 5 V | expects at most 4 V",
        "at most 0.3 ohm -> End fails over 0.3 ohm | at most 0.2 ohm -> End fails over 0.2 ohm", "cases 3 | cases 4", "covers heat | covers heat, shock",
        "note Hot caution | note Hot danger", "starts shut | starts open", "finds Relay | finds nothing", "\"Is the lamp dark?\" | \"Is it dark?\"",
        "complaints \"silent\" | complaints \"mute\"", "resolution 100 mV | resolution 10 mV", "fails over 0.3 ohm -> End | fails over 0.3 ohm -> Look",
    })
    void should_keep_the_heading_for_what_protects(String from, String to) {
        boolean graver = from.startsWith("note Hot");
        List<Difference> found = graver ? ProcedureComparison.of(Texts.procedure(TEXT.replace("Hot danger", "Hot caution")), Texts.procedure(TEXT))
                : compared(from, to);

        assertTrue(!found.isEmpty(), "nothing is told");
        assertEquals(List.of(), found.stream().filter(one -> one.kind() == Kind.PROTECTION).map(Difference::toString).toList());
    }

    private static List<String> protection(String was, String now) {
        return ProcedureComparison.of(Texts.procedure(was), Texts.procedure(now)).stream().filter(one -> one.kind() == Kind.PROTECTION).map(Difference::toString).toList();
    }

    /** What a step that guards says in words, how long it takes, how often it may be tried, and what a code is said to mean. */
    @ParameterizedTest(name = "{0} → {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "\"Wait 60 seconds\" | \"Wait 10 seconds\" | Idle: words: Wait 60 seconds → Wait 10 seconds (60 seconds → 10 seconds)",
        "takes 60 s then | takes 10 s then | Idle: time: 60 s → 10 s",
        "\"Fit it, red to plus\" | \"Fit it, red to minus\" | Fit: words: Fit it, red to plus → Fit it, red to minus",
        "\"Look. Second person in the room\" | \"Look\" | See: words: Look. Second person in the room → Look",
        "hint \"Plug out, 500 V\" | hint \"Plug out, 50 V\" | See: hint: Plug out, 500 V → Plug out, 50 V",
        "\"Bank above 385 V\" | \"Ready\" | Lamp code 5 blinks: meaning: Bank above 385 V → Ready",
        "5 blinks means \"Bank above 385 V\" | | Lamp code 5 blinks: Bank above 385 V → –",
        "at most 2 times, else Away | at most 2 times, else Fit | Prove outside: bound: at most 2 times, else Away → at most 2 times, else Fit",
        "at most 2 times, else Away | at most 2 times, else Fit | Fit: proved and tested before it: Charge absent → – (on a way that comes to it)",
        "yes -> Idle | yes -> Fit | Fit: proved and tested before it: Charge absent → – (on a way that comes to it)",
        "then -> Tested | then -> Good | Good: proved and tested before it: conductor passed → – (on a way that comes to it)",
        "passes at most 0.3 ohm -> Good fails over 0.3 ohm -> Away | passes at most 0.3 ohm -> Good fails over 0.3 ohm -> Good | Good: proved and tested before it: conductor passed → – (on a way that comes to it)",
    })
    void should_name_what_guards_by_its_words_its_time_and_where_it_leads(String from, String to, String sentence) {
        assertTrue(GUARDED.contains(from), from);
        List<String> told = protection(GUARDED, GUARDED.replace(from, to == null ? "" : to));

        assertTrue(told.contains(sentence), told::toString);
    }

    private static final String GUARDED = """
            procedure Flash "Flash" equipment "Tarn 6" class I
            condition Supply { off, on } live when on starts off ends off
            condition Charge { present, absent } charged when present proved at Bank at most 5 V starts present
            point Bank "C20" carries up to 400 V dc
            point Pin "Earth pin"
            note Shock danger { covers shock hazard "Live." consequence "Death." avoid "One hand." }
            indicator Lamp "Lamp" { 1 blinks means "Ready" 5 blinks means "Bank above 385 V" }
            fault Dry "Bank dry" { cases 1 shows See yes remedy Fit }
            begin at See
            check See "Look. Second person in the room" { confirms complaint hint "Plug out, 500 V" yes -> Idle no -> Read }
            observe Read "Lamp?" at Lamp { 1 blinks -> Idle 5 blinks -> Idle anything else -> Away }
            do Idle "Wait 60 seconds" { needs Supply off takes 60 s then -> Prove }
            measure Prove "Read it" { dc voltage at Bank expects at most 5 V notes Shock
                within -> Fit proves Charge absent outside -> Idle at most 2 times, else Away }
            do Fit "Fit it, red to plus" { notes Shock then -> Tested }
            measure Tested "Bond" { resistance at Pin tests conductor passes at most 0.3 ohm -> Good fails over 0.3 ohm -> Away }
            conclude Good "Bank dry" { finds Dry }
            conclude Away "Away" { refers to "the bench" }
            """;

    /** Another name, and some other words, hide no note that went with the old one. */
    @Test
    void should_know_a_step_with_another_name_and_other_words_and_tell_what_it_lost() {
        String renamed = GUARDED.replace("do Fit \"Fit it, red to plus\" { notes Shock then", "do Mount \"Put the new one in\" { then").replace("-> Fit", "-> Mount")
                .replace("remedy Fit", "remedy Mount");
        List<String> told = protection(GUARDED, renamed);

        assertTrue(told.contains("Mount: notes read: Shock → –"), told::toString);
        assertTrue(told.stream().noneMatch(one -> one.contains("remedies")), told::toString);
    }

    /** A note or routine that is only called otherwise is no loss; one that says less under another name is. */
    @Test
    void should_tell_no_loss_of_a_note_that_is_only_called_otherwise() {
        assertEquals(List.of(), protection(GUARDED, GUARDED.replace("Shock", "Live1")));
        List<String> less = protection(GUARDED, GUARDED.replace("Shock", "Live1").replace("One hand.", "Mind."));
        assertEquals(List.of("Live1: avoid: One hand. → Mind."), less);
    }

    /** A step that goes with its notes and tests says which. */
    @Test
    void should_name_what_went_with_a_step() {
        String gone = GUARDED.replaceAll("measure Tested .*\\n", "").replace("then -> Tested", "then -> Good");
        List<String> told = protection(GUARDED, gone);

        assertTrue(told.contains("Step Tested: Bond → – (with its protective tests conductor)"), told::toString);
    }

    /** One end that moved is one line, and not a second one that sounds safer. */
    @Test
    void should_tell_one_end_of_two_bands_once() {
        String wider = GUARDED.replace("0.3 ohm", "3 ohm");
        List<Difference> found = ProcedureComparison.of(Texts.procedure(GUARDED), Texts.procedure(wider));

        assertEquals(List.of("Tested passes: limit: at most 0.3 ohm → at most 3 ohm (wider: at most 3 Ω, was at most 0.3 Ω)"), found.stream().map(Difference::toString).toList());
    }

    /** Removed stands before weakened, weakened before reworded. */
    @Test
    void should_put_the_gravest_first() {
        String less = GUARDED.replace("One hand.", "Mind.").replace("Shock danger", "Shock caution").replace(" needs Supply off", "");
        List<Difference.Loss> order = ProcedureComparison.of(Texts.procedure(GUARDED), Texts.procedure(less)).stream().map(Difference::loss).toList();

        // the condition that nothing asks for any more is removed with the need
        assertEquals(List.of(Difference.Loss.REMOVED, Difference.Loss.REMOVED, Difference.Loss.WEAKENED, Difference.Loss.REWORDED), order);
    }

    /** Routines that perform themselves or one another end. */
    @Test
    void should_bear_routines_that_perform_one_another() {
        String round = "procedure P begin at A perform A by R { out -> E } conclude E { finds nothing } "
                + "routine R { exits out begin at B perform B by S { out -> out } } routine S { exits out begin at C perform C by R { out -> out } }";
        assertEquals(List.of(), protection(round, round.replace("conclude E {", "conclude E \"End\" {")));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The answers of an interview as a procedure whose steps are not in order yet: what it can be, what the steps are, how the unit is
 * opened and closed. The order of the steps, their arrows and the conclusions are drafted from it.
 */
final class InterviewText {
    /** What the set-up is changed by; the draft takes those that it needs. */
    static final Set<String> ACTS = Set.of("OpenUp", "CloseUp", "SwitchOn", "SwitchOff");

    private final Interview asked;
    private final NamesFromWords names = new NamesFromWords();
    private final Map<Danger, Interview.Caution> dangers;
    private final List<String> steps = new ArrayList<>();
    private final List<String> places = new ArrayList<>();
    private final Map<String, String> remedies = new LinkedHashMap<>();

    private final Set<String> without;

    private InterviewText(Interview asked, Set<String> without) {
        this.asked = asked;
        this.without = without;
        this.dangers = new TreeMap<>(asked.dangers());
        asked.store().ifPresent(store -> dangers.putIfAbsent(Danger.CHARGE, new Interview.Caution(Danger.CHARGE.what(), Danger.CHARGE.avoid())));
    }

    /** @param without of the acts below, those that are not wanted */
    static String text(Interview asked, Set<String> without) {
        return new InterviewText(asked, without).text();
    }

    private String text() {
        for (String own : new String[] {asked.name(), "Supply", "Cover", "Charge", "Meter", "Reservoir", "ProveDead", "SeeIt", "TryIt", "OpenUp",
            "CloseUp", "SwitchOn", "SwitchOff", "NotSeen", "NotSolved"}) {
            names.name(own, "X");
        }
        for (Danger danger : Danger.values()) {
            names.name(danger.noteName(), "X");
        }
        IntStream.range(0, asked.signs().size()).forEach(i -> steps.add(names.name(stepWords(asked.signs().get(i)), "Step")));
        IntStream.range(0, asked.signs().size()).forEach(i -> places.add(names.name(asked.signs().get(i).words(), "Place")));
        StringBuilder text = new StringBuilder(head());
        text.append(setUp());
        text.append(meter());
        for (int i = 0; i < steps.size(); i++) {
            text.append(place(asked.signs().get(i), places.get(i)));
        }
        dangers.forEach((danger, words) -> text.append(danger.note(words.what(), words.avoid())).append('\n'));
        asked.store().ifPresent(store -> text.append(proof()));
        if (!asked.causes().isEmpty()) {
            text.append("// What it can be. \"cases\" is how often it was met; \"shows\" is what each step shows then.\n");
        }
        asked.causes().forEach(cause -> text.append(fault(cause)));
        return text.append('\n').append(stepsInWords()).toString();
    }

    private static String stepWords(FaultSign sign) {
        return sign instanceof FaultSign.Reading reading ? reading.words() + " " + reading.quantity().replaceFirst("^.* ", "")
                : sign instanceof FaultSign.Codes codes ? codes.words() + " code" : sign.words();
    }

    private String head() {
        String complaints = asked.complaints().stream().filter(one -> !one.isBlank()).map(NamesFromWords::quoted).collect(Collectors.joining(", "));
        return "// Written from answers, to be written on: complete its words, times, notes and limits before anybody works by it.\n"
                + "procedure " + asked.name() + " " + NamesFromWords.quoted(or(asked.seen(), "What is seen, in a few words")) + "\n\n"
                + "equipment " + NamesFromWords.quoted(or(asked.unit(), "Maker and model")) + " boards " + boards() + "\nrevision 1 draft\n"
                + "complaints " + or(complaints, "\"as the customer put it\"") + "\n\n";
    }

    private String boards() {
        return java.util.Arrays.stream(or(asked.boards(), "A").split("[,;]")).map(String::strip).filter(one -> !one.isEmpty()).map(NamesFromWords::quoted).distinct()
                .collect(Collectors.joining(", "));
    }

    private static String or(String words, String otherwise) {
        return words.isBlank() ? otherwise : words.strip();
    }

    private String setUp() {
        return "condition Supply \"Supply\" { off, on }\n    live when on\n    starts off\n    ends off\n\n"
                + (isOpened() ? "condition Cover \"Cover\" { fitted, removed }\n    starts fitted\n    ends fitted\n\n" : "")
                + asked.store().map(store -> "condition Charge \"Stored charge\" { present, absent }\n    charged when present\n"
                        + "    becomes present when Supply on\n    proved at Reservoir at most 5 V\n    starts present\n\n"
                        + "point Reservoir " + NamesFromWords.quoted(or(store.where(), "Across the largest capacitor")) + "\n    carries up to "
                        + or(voltage(store.most()), "400 V") + " dc\n    hazards charge, shock\n\n").orElse("");
    }

    static String voltage(String words) {
        String value = Tables.value(words);
        return value.matches("[\\d.]+") ? value + " V" : value.matches("[\\d.]+ ?[km]?V") ? value : "";
    }

    private boolean isOpened() {
        return asked.hasCover() || asked.store().isPresent() || asked.signs().stream().anyMatch(FaultSign::isOpen);
    }

    /** Only the ranges of what is read. */
    private String meter() {
        List<String> kinds = new ArrayList<>(asked.signs().stream().filter(FaultSign.Reading.class::isInstance).map(sign -> ((FaultSign.Reading) sign).quantity()).toList());
        asked.store().ifPresent(store -> kinds.add("dc voltage"));
        List<String> ranges = asked.meter().ranges().stream().filter(range -> kinds.stream().anyMatch(range::startsWith)).toList();
        return kinds.isEmpty() || ranges.isEmpty() ? "" : "// The ranges are those of an ordinary meter: put in what the data sheet of yours says.\n".repeat(
                asked.meter().ranges().equals(Interview.Meter.USUAL.ranges()) ? 1 : 0) + "instrument Meter " + NamesFromWords.quoted(or(asked.meter().title(), "Meter"))
                + " {\n" + ranges.stream().map(range -> "    " + range + "\n").collect(Collectors.joining()) + "}\n\n";
    }

    private String place(FaultSign sign, String name) {
        if (sign instanceof FaultSign.Codes codes) {
            return "indicator " + name + " " + NamesFromWords.quoted(codes.words()) + " {\n" + codes.codes().stream().map(code -> "    " + code.shown()
                    + " means " + NamesFromWords.quoted(code.meaning()) + "\n").collect(Collectors.joining()) + "    source " + NamesFromWords.quoted(or(codes.source(), "Document and page"))
                    + "\n}\n\n";
        }
        if (sign instanceof FaultSign.Reading reading) {
            String most = voltage(reading.most());
            return "point " + name + " " + NamesFromWords.quoted(reading.words()) + "\n" + (most.isEmpty() || !reading.quantity().endsWith("voltage") ? ""
                    : "    carries up to " + most + (reading.quantity().startsWith("ac") ? " ac rms" : " dc") + "\n") + "\n";
        }
        return "";
    }

    private String proof() {
        return """
                // The usual order: wait, try the meter, read, wait again.
                routine ProveDead "Wait, then prove the charge gone" {
                    exits dead normal, stillCharged
                    begin at WaitAMinute

                    do WaitAMinute "Wait a minute by the clock" {
                        needs Supply off, Cover removed
                        takes 1 min
                        then -> TryMeter
                    }
                    check TryMeter "Try the meter on a known source. Does it read?" {
                        tries Meter
                        notes StoredCharge
                        takes 30 s
                        reads -> ReadCharge
                        mute  -> OtherMeter at most 1 times, else stillCharged
                    }
                    do OtherMeter "Take another meter, and tag the first" {
                        takes 2 min
                        then -> TryMeter
                    }
                    measure ReadCharge "Read what is left" {
                        dc voltage at Reservoir using Meter
                        needs Supply off, Cover removed
                        notes StoredCharge
                        takes 1 min
                        source "Rule of the house: dead means 5 V at most"
                        gone      at most 5 V -> dead proves Charge absent
                        remaining over 5 V    -> WaitMore at most 2 times, else stillCharged
                    }
                    do WaitMore "Wait two minutes more" {
                        needs Supply off, Cover removed
                        takes 2 min
                        then -> ReadCharge
                    }
                }

                """;
    }

    private String fault(Interview.Cause cause) {
        StringBuilder shows = new StringBuilder("SeeIt asReported");
        for (int i = 0; i < steps.size(); i++) {
            if (!cause.shown(i).isEmpty()) {
                shows.append(", ").append(steps.get(i)).append(' ').append(cause.shown(i));
            }
        }
        String remedy = cause.repair().isBlank() ? "" : remedies.computeIfAbsent(cause.repair().strip(), words -> names.name(words, "Do"));
        return "fault " + names.name(cause.words(), "Fault") + " " + NamesFromWords.quoted(cause.words()) + " {\n    cases "
                + or(Tables.isCount(cause.cases().strip()) ? cause.cases() : "", "1") + "\n    shows " + shows + "\n"
                + (remedy.isEmpty() ? "" : "    remedy " + remedy + "\n") + "}\n";
    }

    // ---- the steps

    private String stepsInWords() {
        StringBuilder text = new StringBuilder(step("check", "SeeIt", asked.supply().on() + ", and try it. Does it do what was reported?",
                "    confirms complaint\n" + (isOpened() ? "" : reading()) + "    sets Supply on\n    takes 2 min\n    asReported -> NotSolved\n    worksWell -> NotSeen\n"));
        for (int i = 0; i < steps.size(); i++) {
            text.append(sign(asked.signs().get(i), steps.get(i), places.get(i)));
        }
        remedies.forEach((words, name) -> text.append(step("do", name, words, "    needs Supply off" + (isOpened() && asked.hasCover() ? ", Cover removed" : "")
                + (asked.store().isPresent() && asked.hasCover() ? ", Charge absent" : "") + "\n" + (asked.hasCover() ? reading() : "") + "    takes " + minutesOf(words) + " min\n")));
        text.append(step("check", "TryIt", asked.supply().on() + ", and try it three times. Does it do what it should, every time?",
                "    verifies repair\n" + (isOpened() ? "    needs Cover fitted\n" : "") + "    sets Supply on\n    takes 3 min\n"));
        if (isOpened()) {
            text.append(step("do", "OpenUp", "Take the cover off", "    needs Supply off\n" + reading() + hazards() + "    sets Cover removed\n    takes 3 min\n"));
            text.append(step("do", "CloseUp", "Fit the cover", "    needs Supply off\n    sets Cover fitted\n    takes 3 min\n"));
        }
        text.append(step("do", "SwitchOn", asked.supply().on(), "    sets Supply on\n    takes 20 s\n"));
        text.append(step("do", "SwitchOff", asked.supply().off(), "    sets Supply off\n    takes 20 s\n"));
        return text.append("""
                conclude NotSeen "Complaint not seen" {
                    finds nothing
                    report "Tried as described; the fault did not show."
                }
                conclude NotSolved "Not solved here" {
                    refers to "Senior technician, with what was tried"
                    report "The cause was not found here."
                }
                """).toString();
    }

    private String minutesOf(String repair) {
        return asked.causes().stream().filter(cause -> cause.repair().strip().equals(repair)).map(cause -> Tables.minutes(cause.minutes()).orElse(""))
                .filter(minutes -> !minutes.isEmpty()).findFirst().orElse("5");
    }

    private String reading() {
        return dangers.isEmpty() ? "" : "    notes " + dangers.keySet().stream().map(Danger::noteName).collect(Collectors.joining(", ")) + "\n";
    }

    /** Said of the step that meets them first, so that the check asks for the notes again when somebody takes them out. */
    private String hazards() {
        return dangers.isEmpty() ? "" : "    hazards " + dangers.keySet().stream().map(Danger::hazard).collect(Collectors.joining(", ")) + "\n";
    }

    private String sign(FaultSign sign, String name, String place) {
        String needs = "    needs Supply " + (sign.isOn() ? "on" : "off") + (sign.isOpen() ? ", Cover removed" : "") + "\n"
                + (sign.isOpen() ? reading() : "") + "    takes " + Tables.minutes(sign.minutes()).orElse("1") + " min\n";
        if (sign instanceof FaultSign.Codes codes) {
            return step("observe", name, "Read the code twice: " + codes.words(), place, needs);
        }
        if (sign instanceof FaultSign.Reading reading) {
            return step("measure", name, reading.words(), "    " + reading.quantity() + " at " + place + " using Meter\n"
                    + (sign.isOn() && sign.isOpen() ? "    live because \"the value is there under power only\"\n" : "") + needs + "    expects "
                    + Interview.limit(reading.expects()) + "\n    source " + NamesFromWords.quoted(or(reading.source(), "Document and page")) + "\n");
        }
        List<String> results = sign.results();
        StringBuilder outcomes = new StringBuilder();
        for (int i = 0; i < results.size(); i++) {
            outcomes.append("    ").append(results.get(i)).append(i == 0 ? " normal" : "").append(" -> NotSolved\n");
        }
        return step("check", name, sign.words(), needs + (results.size() > 1 ? outcomes : ""));
    }

    private String step(String kind, String name, String title, String lines) {
        return without.contains(name) ? "" : kind + " " + name + " " + NamesFromWords.quoted(title) + " {\n" + lines + "}\n";
    }

    private static String step(String kind, String name, String title, String at, String lines) {
        return kind + " " + name + " " + NamesFromWords.quoted(title) + " at " + at + " {\n" + lines + "}\n";
    }
}

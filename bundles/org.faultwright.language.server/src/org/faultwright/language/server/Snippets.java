/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Step;

/** Whole parts with the blanks in reading order, and the items that each part may hold. */
final class Snippets {
    private static final Map<String, String> WHOLE = new LinkedHashMap<>();
    private static final Map<String, String> TEXTS = Map.of("procedure", "procedure ${1:Name} \"${2:what is reported}\"", "library", "library ${1:Name} \"${2:whose bench}\"");
    private static final Map<String, List<String>> ITEMS = new LinkedHashMap<>();
    private static final List<String> FRAME = List.of("needs", "unit", "sets", "notes", "handles", "takes", "wait", "picture", "tools", "hazards",
            "confirms complaint", "verifies repair", "live because", "tries", "tests", "source", "hint");

    static {
        WHOLE.put("check", "check ${1:Name} \"${2:question}\" {\n    takes ${3:1 min}\n    ${4:yes} -> ${5:Next}\n    ${6:no} -> ${7:Other}\n}");
        WHOLE.put("observe", "observe ${1:Name} \"${2:what to look at}\" at ${3:Indicator} {\n    takes ${4:1 min}\n"
                + "    ${5:3 blinks} -> ${6:Next}\n    anything else -> ${7:Other}\n}");
        WHOLE.put("measure", "measure ${1:Name} \"${2:what is measured}\" {\n    ${3:dc voltage} at ${4:Point} against ${5:Ground} using ${6:Instrument}\n"
                + "    needs ${7:Supply on}\n    takes ${8:2 min}\n    expects ${9:24 V +/- 5 %}\n    source \"${10:document, page}\"\n"
                + "    below  -> ${11:Next}\n    within -> ${12:Other}\n    above  -> ${13:Third}\n}");
        WHOLE.put("do", "do ${1:Name} \"${2:what is done}\" {\n    takes ${3:2 min}\n    then -> ${4:Next}\n}");
        WHOLE.put("calculate", "calculate ${1:Name} \"${2:what is computed}\" {\n    value ${3:Reading - Other}\n    expects ${4:at most 1 V}\n"
                + "    within -> ${5:Next}\n    above  -> ${6:Other}\n}");
        WHOLE.put("perform", "perform ${1:Name} \"${2:why}\" by ${3:Routine} {\n    ${4:done} -> ${5:Next}\n}");
        WHOLE.put("conclude", "conclude ${1:Name} \"${2:what was found}\" {\n    finds ${3:Fault}\n    report \"${4:sentence for the customer}\"\n}");
        WHOLE.put("fault", "fault ${1:Name} \"${2:what is broken}\" {\n    cases ${3:10}\n    shows  ${4:Step} ${5:result}\n    remedy ${6:Act}\n    report \"${7:sentence for the customer}\"\n}");
        WHOLE.put("example", "example \"${1:case}\" of ${2:Fault} {\n    ${3:Step} ${4:result}\n    ends at ${5:Conclusion} within ${6:20 min}\n}");
        WHOLE.put("condition", "condition ${1:Name} { ${2:off}, ${3:on} } starts ${4:off} ends ${5:off}");
        WHOLE.put("setup", "setup ${1:dead} \"${2:what the unit is like}\" { ${3:Cover removed}, ${4:Charge absent} }");
        WHOLE.put("instrument", "instrument ${1:Name} \"${2:make and kind}\" {\n    ${3:dc voltage} up to ${4:6 V} resolution ${5:1 mV} "
                + "accuracy ${6:0.5} % of reading + ${7:2} digits input ${8:10 Mohm}\n}");
        WHOLE.put("point", "point ${1:Name} \"${2:where to probe}\" carries up to ${3:24 V} dc");
        WHOLE.put("part", "part ${1:Name} \"${2:part}\"");
        WHOLE.put("indicator", "indicator ${1:Name} \"${2:which lamp}\" {\n    ${3:3 blinks} means \"${4:meaning}\"\n    source \"${5:document, page}\"\n}");
        WHOLE.put("note", "note ${1:Name} ${2:warning} {\n    covers ${3:shock}\n    hazard \"${4:what can happen}\"\n"
                + "    consequence \"${5:what comes of it}\"\n    avoid \"${6:how to avoid it}\"\n}");
        WHOLE.put("routine", "routine ${1:Name} \"${2:what it does}\" {\n    exits ${3:done}\n    takes ${7:2 min}\n    do ${4:First} \"${5:what is done}\" {\n"
                + "        takes ${6:1 min}\n        then -> ${7:done}\n    }\n}");
        WHOLE.put("uses", "uses ${1:Library}");
        WHOLE.put("equipment", "equipment \"${1:what it is for}\" boards \"${2:revision}\"");
        WHOLE.put("revision", "revision ${1:1} draft");
        WHOLE.put("complaints", "complaints \"${1:as reported}\"");
        WHOLE.put("tools", "tools \"${1:screwdriver}\"");
        WHOLE.put("begin at", "begin at ${1:Step}");
        WHOLE.put("decision", "decision rule guarded");
        WHOLE.put("closes", "closes by ${1:CloseUp}");
        WHOLE.put("otherwise", "otherwise ${1:Conclusion}");
        WHOLE.put("ambient", "ambient ${1:18 degC} .. ${2:28 degC}");
        Step.KEYWORDS.forEach(kind -> WHOLE.putIfAbsent(kind, kind + " ${1:Name} \"${2:what it is about}\" {\n    takes ${3:1 min}\n    ${4:done} -> ${5:Next}\n}"));

        ITEMS.put("measure", with("expects", "uncertainty", "units"));
        ITEMS.put("do", with("erases", "repairs", "adjust"));
        ITEMS.put("calculate", with("value", "expects"));
        ITEMS.put("conclude", with("finds", "finds nothing", "refers to", "report"));
        ITEMS.put("fault", List.of("cases", "shows", "remedy", "report", "hazards"));
        ITEMS.put("example", List.of("ends at", "within", "but"));
        ITEMS.put("note", List.of("covers", "hazard", "consequence", "avoid"));
        ITEMS.put("instrument", List.of("rated", "valid", "calibrated every", "calibrated until"));
        ITEMS.put("indicator", List.of("source"));
        ITEMS.put("routine", List.of("exits", "takes", "begin at"));
    }

    private Snippets() {
    }

    private static List<String> with(String... own) {
        return java.util.stream.Stream.concat(java.util.Arrays.stream(own), FRAME.stream()).toList();
    }

    /** The keywords that begin a text, with their blanks. */
    static Map<String, String> texts() {
        return TEXTS;
    }

    /** The keywords that begin a part, with the whole part. */
    static Map<String, String> whole() {
        return WHOLE;
    }

    /** What can stand as an item of that part. */
    static List<String> items(String part) {
        return ITEMS.getOrDefault(part, Step.KEYWORDS.contains(part) ? FRAME : List.of());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The parts of the language in a technician's words. */
final class LanguageParts {
    private static final String QUANTITY = "a number with its unit, as in 24 V,";
    private static final String TERM = "the name of an earlier step, a number or (";

    private static final Map<String, String> BY_RULE = Map.ofEntries(
            Map.entry("QuantityText", QUANTITY), Map.entry("SignedAmountWords", QUANTITY),
            Map.entry("AmountWords", QUANTITY), Map.entry("DecimalWords", "a number"), Map.entry("UnitWord", "a unit"), Map.entry("NUMBER", "a number"),
            Map.entry("DateWords", "a day, as in 2026-01-31,"),
            Map.entry("KindWords", "what is read, such as dc voltage or resistance,"),
            Map.entry("FormWords", "dc, ac rms or ac peak"), Map.entry("SensorWords", "a sensor such as Pt100 or type K"),
            Map.entry("ConcludeText", "nothing or the name of a fault"), Map.entry("HeadText", "a result"), Map.entry("OutcomeText", "a result"),
            Map.entry("LimitText", "a limit, as in 24 V +/- 5 %,"),
            Map.entry("ObservedWords", "what the step shows: a result word, a code or a reading,"),
            Map.entry("PossibleText", "what the step shows: a result word, a code or a reading,"),
            Map.entry("CodeWords", "a code such as 3 blinks or \"E 05\""),
            Map.entry("HazardWord", "a hazard such as shock or heat"), Map.entry("AccuracyText", "a share of the accuracy, as in 0.5 % of reading,"),
            Map.entry("ExpressionText", TERM), Map.entry("ProductText", TERM), Map.entry("UnaryText", TERM),
            Map.entry("PrimaryText", TERM), Map.entry("PlainAmountWords", TERM), Map.entry("ValueText", "the name of a value"),
            Map.entry("SettingText", "a condition and its value, as in Supply off,"));

    private static final Map<String, String> BY_FEATURE = Map.ofEntries(
            Map.entry("name", "a name"), Map.entry("libraries", "the name of a library"),
            Map.entry("target", "the name of the next step"), Map.entry("otherwise", "the name of a step"),
            Map.entry("step", "the name of a step"), Map.entry("condition", "the name of a condition"),
            Map.entry("setting", "a condition and its value, as in Supply off,"),
            Map.entry("settings", "a condition and its value, as in Supply off,"),
            Map.entry("setUps", "the name of a set-up"),
            Map.entry("value", "a value of the condition"), Map.entry("values", "the name of a value"),
            Map.entry("live", "a value of the condition"), Map.entry("charged", "a value of the condition"),
            Map.entry("starts", "a value of the condition"), Map.entry("ends", "a value of the condition"),
            Map.entry("endsAt", "the name of a conclusion"), Map.entry("fault", "the name of a fault"),
            Map.entry("finds", "nothing or the name of a fault"), Map.entry("remedies", "the name of a step"),
            Map.entry("notes", "the name of a note"), Map.entry("parts", "the name of a part"),
            Map.entry("point", "the name of a point"), Map.entry("against", "the name of a point"),
            Map.entry("instrument", "the name of an instrument"), Map.entry("indicator", "the name of an indicator"),
            Map.entry("routine", "the name of a routine"), Map.entry("base", "reading or range"));

    private static final Map<String, String> WORD_IN = Map.of(
            "NoteText", "a signal word (danger, warning, caution or notice)",
            "RevisionText", "draft, reviewed or released", "DecisionRuleText", "simple, guarded or risk");

    private LanguageParts() {
    }

    static Optional<String> ofRule(String rule) {
        return Optional.ofNullable(BY_RULE.get(rule));
    }

    static Optional<String> ofFeature(String feature) {
        return Optional.ofNullable(BY_FEATURE.get(feature));
    }

    /** What a plain word can be in an element of this class. */
    static Optional<String> wordIn(String className) {
        return Optional.ofNullable(WORD_IN.get(className));
    }

    /** An element in words, from the name of its class: the check. */
    static String kind(String className) {
        return "the " + className.replaceAll("Text$", "").toLowerCase(Locale.ROOT);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.faultwright.publish.PlainText;

/** Parts of a tree in words. Any JSON has some, whatever it is. */
final class TreeWords {
    private static final int LONGEST = 240;
    private static final Map<String, String> NAMES = Map.ofEntries(Map.entry("expects", "limit"),
            Map.entry("title", "words"), Map.entry("notes", "notes read"), Map.entry("takes", "time"),
            Map.entry("to", "leads to"), Map.entry("repeat", "bound"), Map.entry("value", "formula"),
            Map.entry("against", "against point"), Map.entry("confirmsComplaint", "confirms the complaint"),
            Map.entry("verifiesRepair", "verifies the repair"), Map.entry("endsAt", "ends at"),
            Map.entry("possible", "shows"), Map.entry("word", "signal word"), Map.entry("begin", "begins at"),
            Map.entry("carries", "voltage carried"));
    private static final Map<String, String> SIGNS = Map.of("add", " + ", "subtract", " - ", "multiply", " * ",
            "divide", " / ");

    private TreeWords() {
    }

    /** Of a key such as {@code sourceResistance}: {@code source resistance}. */
    static String name(String key) {
        return NAMES.getOrDefault(key, PlainText.phrase(key));
    }

    static String of(JsonElement value) {
        String words = PlainText.line(words(value));
        return words.codePointCount(0, words.length()) <= LONGEST ? words
                : words.substring(0, words.offsetByCodePoints(0, LONGEST)) + " \u2026";
    }

    private static String words(JsonElement value) {
        if (value.isJsonArray()) {
            return join(value, ", ");
        }
        if (!value.isJsonObject()) {
            return value.isJsonNull() ? "none"
                    : value.getAsString().replaceAll("^true$", "yes").replaceAll("^false$", "no");
        }
        JsonObject object = value.getAsJsonObject();
        return text(object, "text")
                .or(() -> text(object, "words").map(said -> said
                        + text(object, "percent").map(share -> " " + share + " %").orElse("")))
                .or(() -> pair(object, "condition", " ", "value"))
                .or(() -> pair(object, "pattern", ": ", "meaning"))
                .or(() -> pair(object, "atMost", " times, else ", "then").map(words -> "at most " + words))
                .or(() -> formula(object))
                .or(() -> pair(object, "step", " ", "possible"))
                .orElseGet(() -> object.entrySet().stream().map(entry -> shown(entry.getKey(), entry.getValue()))
                        .filter(words -> !words.isEmpty()).collect(Collectors.joining(", ")));
    }

    /** Members whose names say nothing stand alone. */
    private static String shown(String key, JsonElement value) {
        return switch (key) {
            case "limit", "step", "document", "reading", "constant", "quantity", "title", "rule", "source" -> words(value);
            case "percent", "percentOfReading", "percentOfRange" -> words(value) + " %"
                    + key.replace("percent", "").replace("Of", " of ").toLowerCase(Locale.ROOT);
            default -> name(key) + " " + words(value);
        };
    }

    private static Optional<String> text(JsonObject object, String key) {
        return Optional.ofNullable(object.get(key)).filter(JsonElement::isJsonPrimitive).map(JsonElement::getAsString);
    }

    private static Optional<String> pair(JsonObject object, String first, String between, String second) {
        return object.size() == 2 && object.has(first) && object.has(second)
                ? Optional.of(words(object.get(first)) + between + words(object.get(second))) : Optional.empty();
    }

    private static Optional<String> formula(JsonObject object) {
        Optional<String> operation = text(object, "operation");
        if (operation.isEmpty() || !object.has("arguments")) {
            return Optional.empty();
        }
        String sign = SIGNS.get(operation.get());
        return Optional.of(sign == null ? operation.get() + "(" + join(object.get("arguments"), ", ") + ")"
                : "(" + join(object.get("arguments"), sign) + ")");
    }

    private static String join(JsonElement array, String between) {
        List<JsonElement> all = new ArrayList<>();
        if (array.isJsonArray()) {
            StreamSupport.stream(array.getAsJsonArray().spliterator(), false).forEach(all::add);
        } else {
            all.add(array);
        }
        return all.stream().map(TreeWords::words).collect(Collectors.joining(between));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.publish.since.Change.Area;

/**
 * Holds two trees of a procedure against each other, member by member, so that nothing differs without being
 * told. What follows from the rest is left out: the numbers of the steps, the uncertainty at a limit, the
 * findings, the digest.
 */
final class TreeComparison {
    private static final Set<String> FOLLOWS = Set.of("$schema", "schemaVersion", "caution", "digest", "revision",
            "findings", "number", "letter", "id", "key", "uncertainty");
    /** Lists of named things: the member that names each, and what one is called. */
    private static final Map<String, List<String>> NAMED = Map.ofEntries(Map.entry("steps", List.of("id", "step")),
            Map.entry("routines", List.of("id", "routine")), Map.entry("outcomes", List.of("key", "result")),
            Map.entry("faults", List.of("id", "fault")), Map.entry("shows", List.of("step", "shows at")),
            Map.entry("examples", List.of("title", "example")), Map.entry("conditions", List.of("id", "condition")),
            Map.entry("instruments", List.of("id", "instrument")), Map.entry("points", List.of("id", "point")),
            Map.entry("parts", List.of("id", "part")), Map.entry("indicators", List.of("id", "indicator")),
            Map.entry("codes", List.of("pattern", "code")), Map.entry("notes", List.of("id", "note")));
    private static final Map<String, Area> AREAS = areas();
    private static final Set<String> SPELT = Set.of("text", "value", "unit");

    private final List<Change> changes = new ArrayList<>();

    private TreeComparison() {
    }

    static List<Change> of(JsonObject was, JsonObject now) {
        TreeComparison comparison = new TreeComparison();
        JsonObject aligned = comparison.renamed(was, now);
        comparison.members(Area.RECORD, "", aligned, now);
        return comparison.changes.stream().distinct().sorted(Comparator.comparing(Change::area)).toList();
    }

    private static Map<String, Area> areas() {
        Map<String, Area> areas = new LinkedHashMap<>();
        for (String key : List.of("expects", "range", "quantity", "point", "against", "instrument", "sensor", "uncertainty",
                "unitDeviation", "value", "limit", "source", "decisionRule")) {
            areas.put(key, Area.LIMITS);
        }
        for (String key : List.of("needs", "sets", "hazards", "handles", "erases", "notes", "conditions", "proves",
                "parts")) {
            areas.put(key, Area.SAFETY);
        }
        for (String key : List.of("outcomes", "begin", "exits")) {
            areas.put(key, Area.WAYS);
        }
        areas.put("steps", Area.STEPS);
        areas.put("routines", Area.STEPS);
        areas.put("faults", Area.FAULTS);
        areas.put("examples", Area.EXAMPLES);
        for (String key : List.of("instruments", "points", "indicators")) {
            areas.put(key, Area.BENCH);
        }
        return areas;
    }

    private void members(Area area, String of, JsonObject was, JsonObject now) {
        Set<String> keys = new LinkedHashSet<>(now.keySet());
        keys.addAll(was.keySet());
        for (String key : keys) {
            boolean codesMeaning = key.equals("meaning") && now.has("key");
            if (FOLLOWS.contains(key) || codesMeaning) {
                continue;
            }
            // a fault's, an example's or a point's own members belong to it
            boolean belongs = area == Area.FAULTS || area == Area.EXAMPLES || area == Area.BENCH;
            Area here = belongs ? area : AREAS.getOrDefault(key, area);
            JsonElement before = was.get(key);
            JsonElement after = now.get(key);
            if (NAMED.containsKey(key) && isListOfObjects(before) && isListOfObjects(after)) {
                named(here, of, key, before, after);
            } else if (key.equals("expects") && isObject(before) && isObject(after)) {
                members(here, of, before.getAsJsonObject(), after.getAsJsonObject());
            } else if (before == null || !before.equals(after)) {
                String what = of.isEmpty() ? key : key.equals("possible") ? of : of + ": " + TreeWords.name(key);
                changes.add(differs(here, what, before, after));
            }
        }
    }

    private static Change differs(Area area, String what, JsonElement before, JsonElement after) {
        String was = before == null ? Change.ABSENT : TreeWords.of(before);
        String now = after == null ? Change.ABSENT : TreeWords.of(after);
        boolean respelt = before != null && after != null && values(before).equals(values(after));
        return new Change(area, what, was, was.equals(now) ? now + " (computed otherwise)"
                : respelt ? now + " (the same value)" : now);
    }

    private static boolean isObject(JsonElement element) {
        return element != null && element.isJsonObject();
    }

    /** An absent list is an empty one. */
    private static boolean isListOfObjects(JsonElement list) {
        if (list == null) {
            return true;
        }
        if (!list.isJsonArray()) {
            return false;
        }
        for (JsonElement item : list.getAsJsonArray()) {
            if (!item.isJsonObject()) {
                return false;
            }
        }
        return true;
    }

    private void named(Area area, String of, String key, JsonElement before, JsonElement after) {
        Map<String, JsonObject> was = byName(key, before);
        Map<String, JsonObject> now = byName(key, after);
        if (key.equals("outcomes")) {
            alignBands(was, now);
        }
        String noun = NAMED.get(key).get(1);
        String lead = (of.isEmpty() ? "" : of + " ") + (key.equals("shows") || key.equals("codes") ? noun + " " : "");
        now.forEach((name, item) -> {
            if (was.containsKey(name)) {
                members(area, lead + name, was.get(name), item);
            } else {
                changes.add(new Change(area, called(of, noun, name), Change.ABSENT, inShort(item)));
            }
        });
        was.forEach((name, item) -> {
            if (!now.containsKey(name)) {
                changes.add(new Change(area, called(of, noun, name), inShort(item), Change.ABSENT));
            }
        });
    }

    private static String called(String of, String noun, String name) {
        return (of.isEmpty() ? Character.toUpperCase(noun.charAt(0)) + noun.substring(1) : of + " " + noun) + " " + name;
    }

    /** What tells a reader which one it is: its title, where it leads, what it shows; else all of it. */
    private static String inShort(JsonObject item) {
        for (String key : List.of("title", "to", "possible", "meaning", "hazard", "endsAt")) {
            if (item.has(key)) {
                return (key.equals("to") ? "leads to " : key.equals("endsAt") ? "ends at " : "") + TreeWords.of(item.get(key));
            }
        }
        return TreeWords.of(item);
    }

    private static Map<String, JsonObject> byName(String key, JsonElement list) {
        Map<String, JsonObject> named = new LinkedHashMap<>();
        for (JsonElement item : list == null ? new JsonArray() : list.getAsJsonArray()) {
            JsonElement name = item.getAsJsonObject().get(NAMED.get(key).get(0));
            String words = name == null ? "without a name" : TreeWords.of(name);
            String one = words;
            for (int i = 2; named.containsKey(one); i++) {
                one = words + " (" + i + ")";
            }
            named.put(one, item.getAsJsonObject());
        }
        return named;
    }

    /** A band without a label is named by its limit; when that changes, the bands left over match in their order. */
    private static void alignBands(Map<String, JsonObject> was, Map<String, JsonObject> now) {
        List<String> gone = was.keySet().stream().filter(name -> isBand(was.get(name)) && !now.containsKey(name)).toList();
        List<String> fresh = now.keySet().stream().filter(name -> isBand(now.get(name)) && !was.containsKey(name)).toList();
        if (gone.size() == fresh.size()) {
            for (int i = 0; i < gone.size(); i++) {
                was.put(fresh.get(i), was.remove(gone.get(i)));
            }
        }
    }

    private static boolean isBand(JsonObject outcome) {
        return outcome.has("limit");
    }

    /** Numbers in base units alone, without the author's spelling of them. */
    private static JsonElement values(JsonElement element) {
        if (element.isJsonArray()) {
            JsonArray array = new JsonArray();
            element.getAsJsonArray().forEach(item -> array.add(values(item)));
            return array;
        }
        if (!element.isJsonObject()) {
            return element;
        }
        JsonObject object = element.getAsJsonObject();
        boolean computed = object.has("base") || object.has("baseUnit");
        boolean read = object.has("reading");
        JsonObject values = new JsonObject();
        object.entrySet().stream().filter(entry -> !(computed && SPELT.contains(entry.getKey()))
                && !(read && entry.getKey().equals("words")))
                .forEach(entry -> values.add(entry.getKey(), values(entry.getValue())));
        return values;
    }

    /** The earlier tree with today's names, where a step has only been called otherwise: the same kind and the same words. */
    private JsonObject renamed(JsonObject was, JsonObject now) {
        Map<String, String> names = new LinkedHashMap<>();
        Map<String, JsonObject> before = isListOfObjects(was.get("steps")) ? byName("steps", was.get("steps")) : Map.of();
        Map<String, JsonObject> after = byName("steps", now.get("steps"));
        before.forEach((name, step) -> {
            if (!after.containsKey(name)) {
                only(after, step).filter(other -> !before.containsKey(other) && only(before, step).isPresent())
                        .ifPresent(other -> names.put(name, other));
            }
        });
        names.forEach((old, today) -> changes.add(new Change(Area.STEPS, "Step " + today + ": name", old, today)));
        return names.isEmpty() ? was : withNames(was, "", names).getAsJsonObject();
    }

    private static Optional<String> only(Map<String, JsonObject> steps, JsonObject like) {
        List<String> found = steps.entrySet().stream().filter(entry -> like.has("title") && like.has("kind")
                && like.get("title").equals(entry.getValue().get("title"))
                && like.get("kind").equals(entry.getValue().get("kind"))).map(Map.Entry::getKey).toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    private static JsonElement withNames(JsonElement element, String key, Map<String, String> names) {
        if (element.isJsonArray()) {
            JsonArray array = new JsonArray();
            element.getAsJsonArray().forEach(item -> array.add(withNames(item, key, names)));
            return array;
        }
        if (element.isJsonObject()) {
            JsonObject object = new JsonObject();
            element.getAsJsonObject().entrySet()
                    .forEach(entry -> object.add(entry.getKey(), withNames(entry.getValue(), entry.getKey(), names)));
            return object;
        }
        boolean isName = Set.of("id", "step", "begin", "remedies", "endsAt", "reading").contains(key);
        return isName && element.isJsonPrimitive() && names.containsKey(element.getAsString())
                ? new JsonPrimitive(names.get(element.getAsString())) : element;
    }
}

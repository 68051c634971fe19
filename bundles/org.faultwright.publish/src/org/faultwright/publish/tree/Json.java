/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Written;
import org.faultwright.publish.page.PlainText;

/** Small words for building JSON: what is absent or empty is left out, and order is kept. */
public final class Json {
    private static final Gson PRINTER = new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

    private final JsonObject object = new JsonObject();

    public Json put(String key, String value) {
        object.addProperty(key, whole(value));
        return this;
    }

    public Json put(String key, int value) {
        object.addProperty(key, value);
        return this;
    }

    public Json put(String key, boolean value) {
        object.addProperty(key, value);
        return this;
    }

    public Json put(String key, Json value) {
        object.add(key, value.object);
        return this;
    }

    /** A whole number as the words of a text carry it. */
    public Json putNumber(String key, Optional<Written<Integer>> value) {
        value.ifPresent(number -> put(key, number.value()));
        return this;
    }

    public Json put(String key, JsonElement value) {
        object.add(key, value);
        return this;
    }

    public Json putText(String key, Optional<String> value) {
        value.filter(text -> !text.isBlank()).ifPresent(text -> put(key, text));
        return this;
    }

    public Json put(String key, Optional<Json> value) {
        value.ifPresent(json -> put(key, json));
        return this;
    }

    public Json putNames(String key, List<Name> names) {
        return putTexts(key, names.stream().map(Name::text).toList());
    }

    public Json putTexts(String key, List<String> texts) {
        if (!texts.isEmpty()) {
            JsonArray array = new JsonArray();
            texts.forEach(text -> array.add(whole(text)));
            object.add(key, array);
        }
        return this;
    }

    public <T> Json putAll(String key, List<T> items, Function<T, Json> write) {
        if (!items.isEmpty()) {
            JsonArray array = new JsonArray();
            items.forEach(item -> array.add(write.apply(item).object));
            object.add(key, array);
        }
        return this;
    }

    /** Every member of another. */
    public Json putAll(Json other) {
        other.object.entrySet().forEach(entry -> object.add(entry.getKey(), entry.getValue()));
        return this;
    }

    public JsonObject object() {
        return object;
    }

    /** UTF-8, line feeds, two spaces. */
    public byte[] bytes() {
        return (PRINTER.toJson(object) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    /** Half of a surrogate pair has no form in UTF-8. */
    private static String whole(String text) {
        StringBuilder whole = new StringBuilder(text.length());
        text.codePoints().forEach(c -> whole.appendCodePoint(
                Character.getType(c) == Character.SURROGATE ? PlainText.STAND_IN : c));
        return whole.toString();
    }
}

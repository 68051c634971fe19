/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.faultwright.analysis.walk.WalkRecord;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.page.PlainText;

/** Reads the records that the bench page saves ({@code walk-record-1.schema.json}) as walks by a procedure. */
public final class RecordFile {
    /** No walk of a bench fills more; longer files are refused unread. */
    public static final int LARGEST = 2_000_000;
    private static final Pattern ID = Pattern.compile("urn:uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
    private static final Pattern VERSION = Pattern.compile("1\\.[0-9]+");
    private static final Pattern TIME = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\\.[0-9]+)?Z");
    private static final BigDecimal LONGEST = BigDecimal.valueOf(10_000_000);
    private static final int SHOWN = 60;

    private RecordFile() {
    }

    /** @throws RecordRefused if it is no record, of another procedure, revision or text, or does not fit its steps */
    public static WalkRecord read(String json, Procedure procedure) throws RecordRefused {
        JsonObject record = object(parsed(json)).filter(one -> text(one, "$schema").filter(BenchPage.RECORD_SCHEMA::equals).isPresent())
                .orElseThrow(() -> new RecordRefused("it is no record of a walk"));
        JsonObject from = object(record.get("procedure")).orElseThrow(RecordFile::damaged);
        String name = text(from, "id").orElseThrow(RecordFile::damaged);
        if (!name.equals(procedure.name().text())) {
            throw new RecordRefused("it is of " + shown(name) + ", and not of " + shown(procedure.name().text()));
        }
        String revision = object(from.get("revision")).map(one -> one.get("number")).map(RecordFile::plain).orElse("none");
        String here = procedure.revision().map(Revision::number).map(String::valueOf).orElse("none");
        if (!revision.equals(here)) {
            throw new RecordRefused("it is of revision " + shown(revision) + ", and the text is revision " + here);
        }
        if (!text(from, "digest").equals(Optional.of("sha256:" + ContentDigest.of(procedure)))) {
            throw new RecordRefused("it was made from another text of the same revision");
        }
        String id = text(record, "id", ID);
        text(record, "schemaVersion", VERSION);
        time(record, "begun");
        WalkRecord walked = WalkRecord.of(procedure, id, entries(record)).orElseThrow(RecordFile::damaged);
        Optional<String> stated = record.has("conclusion") ? Optional.of(text(record, "conclusion").orElseThrow(RecordFile::damaged)) : Optional.empty();
        if (!stated.equals(walked.conclusion().map(end -> end.name().text()))) {
            throw damaged();
        }
        return walked;
    }

    private static JsonElement parsed(String json) throws RecordRefused {
        try (JsonReader reader = new JsonReader(new StringReader(json))) {
            reader.setStrictness(Strictness.STRICT);
            JsonElement whole = JsonParser.parseReader(reader);
            if (reader.peek() != JsonToken.END_DOCUMENT) {
                throw new JsonParseException("more than one value");
            }
            return whole;
        } catch (JsonParseException | IOException | StackOverflowError broken) {
            throw (RecordRefused) new RecordRefused("it is not JSON, or it is damaged").initCause(broken);
        }
    }

    private static List<WalkRecord.Entry> entries(JsonObject record) throws RecordRefused {
        if (!(record.get("steps") instanceof JsonArray steps)) {
            throw damaged();
        }
        List<WalkRecord.Entry> entries = new ArrayList<>();
        for (JsonElement one : steps) {
            JsonObject step = object(one).orElseThrow(RecordFile::damaged);
            time(step, "ended");
            StringBuilder place = new StringBuilder();
            if (step.get("within") instanceof JsonArray within) {
                within.forEach(caller -> place.append(plain(caller)).append('/'));
            }
            place.append(text(step, "step").orElseThrow(RecordFile::damaged));
            entries.add(new WalkRecord.Entry(place.toString(), text(step, "outcome").orElseThrow(RecordFile::damaged), seconds(step),
                    step.get("doubtful") instanceof JsonPrimitive doubtful && doubtful.isBoolean() && doubtful.getAsBoolean()));
        }
        return entries;
    }

    private static int seconds(JsonObject step) throws RecordRefused {
        if (!(step.get("seconds") instanceof JsonPrimitive seconds) || !seconds.isNumber()) {
            throw damaged();
        }
        try {
            BigDecimal value = seconds.getAsBigDecimal();
            if (value.signum() < 0 || value.compareTo(LONGEST) > 0) {
                throw damaged();
            }
            return value.intValue();
        } catch (NumberFormatException endless) {
            throw (RecordRefused) damaged().initCause(endless);
        }
    }

    private static RecordRefused damaged() {
        return new RecordRefused("it does not fit the steps of its procedure: it was changed or damaged");
    }

    private static Optional<JsonObject> object(JsonElement element) {
        return element instanceof JsonObject object ? Optional.of(object) : Optional.empty();
    }

    private static Optional<String> text(JsonObject object, String key) {
        return object.get(key) instanceof JsonPrimitive text && text.isString() ? Optional.of(text.getAsString()) : Optional.empty();
    }

    private static String text(JsonObject object, String key, Pattern form) throws RecordRefused {
        return text(object, key).filter(text -> form.matcher(text).matches()).orElseThrow(RecordFile::damaged);
    }

    /** @throws RecordRefused where there is no such time in any calendar */
    private static void time(JsonObject object, String key) throws RecordRefused {
        try {
            Instant.parse(text(object, key, TIME));
        } catch (DateTimeParseException never) {
            throw damaged();
        }
    }

    private static String plain(JsonElement element) {
        return element instanceof JsonPrimitive words ? words.getAsString() : "?";
    }

    private static String shown(String words) {
        String line = PlainText.line(words);
        return line.codePointCount(0, line.length()) > SHOWN ? line.substring(0, line.offsetByCodePoints(0, SHOWN)) + "\u2026" : line;
    }
}

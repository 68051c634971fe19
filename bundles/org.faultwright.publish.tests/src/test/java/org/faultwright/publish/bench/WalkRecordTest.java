/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import dev.harrel.jsonschema.ValidatorFactory;
import dev.harrel.jsonschema.providers.GsonNode;
import java.util.List;
import java.util.function.Consumer;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records as the page writes them, before the same two judges as the trees. */
class WalkRecordTest {
    private static final String TREE = Samples.string("tree-json", Samples.demo(Samples.demos().stream()
            .filter(file -> file.endsWith("OllenbyFaintLabels.procedure")).findFirst().orElseThrow()));
    private static final String KEPT = """
            { "id": "urn:uuid:01234567-89ab-4cde-8f01-23456789abcd", "begun": "2026-03-01T08:00:00.000Z", "ended": "2026-03-01T08:09:00.000Z",
              "job": { "serial": "P2-0007" }, "remarks": " Roll was damp. ", "ticks": { "Supply": true },
              "takenBack": [ { "step": "SeeIt", "outcome": "blank", "at": "2026-03-01T08:02:00.000Z" } ],
              "moves": [
                { "enter": true, "at": "2026-03-01T08:00:00.000Z", "seconds": 0 },
                { "outcome": "sound", "at": "2026-03-01T08:00:20.000Z", "seconds": 20 },
                { "outcome": "done", "at": "2026-03-01T08:00:40.000Z", "seconds": 20 },
                { "outcome": "good", "at": "2026-03-01T08:02:40.000Z", "seconds": 120 },
                { "outcome": "yes", "at": "2026-03-01T08:09:00.000Z", "seconds": 380 } ] }
            """;

    private static JsonObject record() {
        try (WalkScript script = new WalkScript()) {
            return script.written(TREE, KEPT);
        }
    }

    private static JsonObject opened(String record) {
        try (WalkScript script = new WalkScript()) {
            return script.opened(TREE, record);
        }
    }

    private static List<String> judged(JsonObject record) {
        List<String> first = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(BenchPage.recordSchema())
                .validate(record.toString(), InputFormat.JSON).stream().map(Object::toString).toList();
        List<String> second = new ValidatorFactory().withJsonNodeFactory(new GsonNode.Factory()).validate(BenchPage.recordSchema(), record.toString())
                .getErrors().stream().map(error -> error.getInstanceLocation() + ": " + error.getError()).toList();
        assertEquals(first.isEmpty(), second.isEmpty(), first + " " + second);
        return first;
    }

    @Test
    void should_have_a_schema_that_follows_its_own_standard() {
        assertEquals(0, JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema")).validate(BenchPage.recordSchema(), InputFormat.JSON).size());
        assertEquals(BenchPage.RECORD_SCHEMA, JsonParser.parseString(BenchPage.recordSchema()).getAsJsonObject().get("$id").getAsString());
    }

    @Test
    void should_write_records_that_both_judges_accept_and_that_name_nobody() {
        JsonObject record = record();
        assertEquals(List.of(), judged(record));
        assertFalse(record.getAsJsonObject("job").has("technician"));
        assertTrue(record.getAsJsonArray("steps").size() >= 4, record.toString());
    }

    @Test
    void should_have_a_schema_that_both_judges_refuse_spoiled_records_by() {
        List<Consumer<JsonObject>> ways = List.of(record -> record.addProperty("surprise", 1), record -> record.remove("id"),
                record -> record.addProperty("begun", "yesterday"), record -> record.getAsJsonObject("procedure").addProperty("digest", "sha256:12"),
                record -> record.getAsJsonArray("steps").get(0).getAsJsonObject().addProperty("seconds", -1),
                record -> record.getAsJsonObject("job").addProperty("serial", ""));
        ways.forEach(way -> {
            JsonObject record = record();
            way.accept(record);
            assertFalse(judged(record).isEmpty(), record.toString());
        });
    }

    @Test
    void should_open_what_it_wrote() {
        JsonObject kept = opened(record().toString()).getAsJsonObject("kept");
        try (WalkScript script = new WalkScript()) {
            assertEquals(record(), script.written(TREE, kept.toString()));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "{", "null", "[]", "1", "{\"$schema\":\"urn:faultwright:walk-record:1\"}", "{\"procedure\":[],\"steps\":[]}" })
    void should_refuse_what_is_no_record_with_one_sentence(String text) {
        String refused = opened(text).get("refused").getAsString();
        assertTrue(refused.startsWith("This file is no record") && refused.endsWith("."), refused);
    }

    @Test
    void should_refuse_records_of_another_procedure_revision_or_text() {
        assertRefused(record -> record.getAsJsonObject("procedure").addProperty("id", "Other\u202E<b>"),
                "This record is of Other <b>, and this page walks OllenbyFaintLabels: open it in the page of its own procedure.");
        assertRefused(record -> record.getAsJsonObject("procedure").getAsJsonObject("revision").addProperty("number", 6),
                "This record is of revision 6, and this page is of revision 7: open it in the page of its own revision.");
        assertRefused(record -> record.getAsJsonObject("procedure").addProperty("digest", "sha256:" + "0".repeat(64)),
                "This record was made from another text of the same revision: open it in the page that it was made with.");
        String damaged = "This record does not fit the steps of its procedure: it was changed or damaged.";
        assertRefused(record -> record.getAsJsonArray("steps").remove(0), damaged);
        assertRefused(record -> record.getAsJsonArray("steps").get(2).getAsJsonObject().addProperty("outcome", "__proto__"), damaged);
        assertRefused(record -> record.getAsJsonArray("steps").get(2).getAsJsonObject().addProperty("step", "constructor"), damaged);
        assertRefused(record -> record.getAsJsonArray("steps").add("x"), damaged);
    }

    private static void assertRefused(Consumer<JsonObject> way, String sentence) {
        JsonObject record = record();
        way.accept(record);
        assertEquals(sentence, opened(record.toString()).get("refused").getAsString());
    }
}

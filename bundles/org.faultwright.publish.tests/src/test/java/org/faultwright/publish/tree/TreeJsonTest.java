/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import dev.harrel.jsonschema.ValidatorFactory;
import dev.harrel.jsonschema.providers.GsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import dev.harrel.jsonschema.ValidatorFactory;
import dev.harrel.jsonschema.providers.GsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Trees before two judges from different hands, both for JSON Schema 2020-12. */
class TreeJsonTest {
    private static final String SCHEMA = TreeJson.schema();

    private static List<String> firstJudge(String json) {
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SCHEMA);
        return schema.validate(json, InputFormat.JSON).stream().map(Object::toString).toList();
    }

    private static List<String> secondJudge(String json) {
        return new ValidatorFactory().withJsonNodeFactory(new GsonNode.Factory()).validate(SCHEMA, json).getErrors()
                .stream().map(error -> error.getInstanceLocation() + ": " + error.getError()).toList();
    }

    static Stream<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything(), Samples.demo(Samples.REFERENCE)), Samples.demos().stream().map(Samples::demo));
    }

    @Test
    void should_have_demo_procedures_to_judge() {
        assertTrue(Samples.demos().size() >= 5, Samples.demos().toString());
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_write_trees_that_both_judges_accept(Publication publication) {
        String json = Samples.string("tree-json", publication);
        assertEquals(List.of(), firstJudge(json));
        assertEquals(List.of(), secondJudge(json));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "procedure P",
        "procedure P check A \"?\" { yes -> } measure B { -> Nowhere }",
        "procedure P measure M { resistance expects 4 zorks below -> X within -> X above -> X } conclude X { }",
        "procedure P measure M { dc voltage expects 5 .. 4 V within -> X outside -> X } conclude X { finds nothing }",
        "procedure P perform C by NoSuch { x -> A at most 2 times else Missing } calculate F { value (A - " })
    void should_write_drafts_of_broken_texts_that_both_judges_accept(String text) {
        String json = Samples.string("tree-json", Samples.text(text));
        assertEquals(List.of(), firstJudge(json));
        assertEquals(List.of(), secondJudge(json));
    }

    @Test
    void should_have_a_schema_that_follows_its_own_standard() {
        JsonSchema standard = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertEquals(0, standard.validate(SCHEMA, InputFormat.JSON).size());
        assertEquals(TreeJson.SCHEMA, JsonParser.parseString(SCHEMA).getAsJsonObject().get("$id").getAsString());
    }

    /** What a schema lets through shows only when something is wrong. */
    @ParameterizedTest
    @MethodSource("spoiled")
    void should_have_a_schema_that_both_judges_refuse_spoiled_trees_by(String what, String json) {
        assertFalse(firstJudge(json).isEmpty(), what);
        assertFalse(secondJudge(json).isEmpty(), what);
    }

    static Stream<Arguments> spoiled() {
        Map<String, Consumer<JsonObject>> ways = Map.of(
                "a member nobody knows", tree -> tree.addProperty("surprise", 1),
                "no caution", tree -> tree.remove("caution"),
                "a limit as a number", tree -> limit(tree).getAsJsonObject("upper").addProperty("value", 13.2),
                "an end that is neither in nor out", tree -> limit(tree).getAsJsonObject("upper").remove("included"),
                "a step of no kind", tree -> step(tree, "SeeIt").addProperty("kind", "think"),
                "a measurement that erases", tree -> step(tree, "RailVolts").addProperty("erases", "all"),
                "a conclusion that leads on", tree -> step(tree, "NotSeen").add("outcomes",
                        step(tree, "SeeIt").get("outcomes")),
                "a way to nowhere", tree -> step(tree, "SeeIt").getAsJsonArray("outcomes").get(0).getAsJsonObject()
                        .add("to", new JsonObject()),
                "a digest that is too short", tree -> tree.addProperty("digest", "sha256:12"),
                "a status of our own", tree -> tree.getAsJsonObject("revision").addProperty("status", "perfect"));
        return ways.entrySet().stream().map(way -> {
            JsonObject tree = tree();
            way.getValue().accept(tree);
            return Arguments.of(way.getKey(), tree.toString());
        });
    }

    private static JsonObject tree() {
        return JsonParser.parseString(Samples.string("tree-json", Samples.everything())).getAsJsonObject();
    }

    private static JsonObject step(JsonObject tree, String id) {
        return tree.getAsJsonArray("steps").asList().stream().map(JsonElement::getAsJsonObject)
                .filter(step -> step.get("id").getAsString().equals(id)).findFirst().orElseThrow();
    }

    private static JsonObject limit(JsonObject tree) {
        return step(tree, "RailVolts").getAsJsonObject("expects").getAsJsonObject("limit");
    }

    @Test
    void should_write_limits_as_exact_decimals_with_their_ends() {
        JsonObject limit = limit(tree());
        // 12 V +10 % -5 % is 11.4 V to 13.2 V, both ends belonging to it
        assertEquals("12 V +10 % -5 %", limit.get("text").getAsString());
        assertEquals("11.4", limit.getAsJsonObject("lower").get("value").getAsString());
        assertEquals("13.2", limit.getAsJsonObject("upper").get("value").getAsString());
        assertTrue(limit.getAsJsonObject("upper").get("included").getAsBoolean());
    }

    @Test
    void should_write_temperatures_in_kelvin_as_the_base() {
        JsonObject limit = step(tree(), "PlateRise").getAsJsonObject("expects").getAsJsonObject("limit");
        // 25 degC = 298.15 K: SI Brochure, 9th edition, 2.3.1
        assertEquals("50", limit.getAsJsonObject("lower").get("value").getAsString());
        assertEquals("Cel", limit.getAsJsonObject("lower").get("unit").getAsString());
        assertEquals("323.15", limit.getAsJsonObject("lower").get("base").getAsString());
        assertEquals("K", limit.get("baseUnit").getAsString());
    }

    @Test
    void should_say_where_a_base_value_is_rounded() {
        JsonObject upper = step(tree(), "FanSpeed").getAsJsonObject("expects").getAsJsonObject("limit")
                .getAsJsonObject("upper");
        // 2200 rpm is 36.666… Hz
        assertEquals("2200", upper.get("value").getAsString());
        assertTrue(upper.get("rounded").getAsBoolean());
        assertTrue(upper.get("base").getAsString().startsWith("36.66666666666"), upper.toString());
    }

    @Test
    void should_leave_an_open_end_out() {
        JsonObject band = step(tree(), "HeaterVolts").getAsJsonArray("outcomes").get(3).getAsJsonObject();
        assertEquals("over 253 V", band.getAsJsonObject("limit").get("text").getAsString());
        assertFalse(band.getAsJsonObject("limit").has("upper"));
        assertFalse(band.getAsJsonObject("limit").getAsJsonObject("lower").get("included").getAsBoolean());
    }

    /** The functional library of the UCUM project's Java port knows every code that we write. */
    @Test
    void should_write_units_that_an_independent_library_knows() throws IOException, UcumException {
        TreeSet<String> units = new TreeSet<>();
        published().forEach(publication -> collect(JsonParser.parseString(Samples.string("tree-json", publication)), units));
        assertTrue(units.size() > 15, units.toString());
        try (InputStream essence = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
            UcumEssenceService ucum = new UcumEssenceService(essence);
            units.forEach(unit -> assertEquals(null, ucum.validate(unit), unit));
        }
    }

    private static void collect(JsonElement element, TreeSet<String> units) {
        if (element.isJsonArray()) {
            element.getAsJsonArray().forEach(item -> collect(item, units));
        } else if (element.isJsonObject()) {
            element.getAsJsonObject().entrySet().forEach(entry -> {
                if (entry.getKey().equals("unit") || entry.getKey().equals("baseUnit")) {
                    units.add(entry.getValue().getAsString());
                } else {
                    collect(entry.getValue(), units);
                }
            });
        }
    }

    @Test
    void should_say_the_caution_and_the_digest_and_number_steps_as_the_card_does() {
        JsonObject tree = tree();
        assertTrue(tree.get("caution").getAsString().startsWith("Local codes, the maker's instructions"));
        assertEquals("sha256:" + Samples.everything().digest(), tree.get("digest").getAsString());
        assertEquals("1", step(tree, "SeeIt").get("number").getAsString());
        CardPlan plan = TypesetPlan.of(Samples.everything());
        for (JsonElement routine : tree.getAsJsonArray("routines")) {
            String name = routine.getAsJsonObject().get("id").getAsString();
            String letter = plan.sections().stream().filter(section -> section.graph().name().text().equals(name))
                    .map(CardSection::letter).findFirst().orElse("none");
            assertEquals(letter, Optional.ofNullable(routine.getAsJsonObject().get("letter")).map(JsonElement::getAsString).orElse("none"));
        }
    }

    @Test
    void should_tell_no_folder_of_the_machine() {
        Path demo = Samples.demos().get(0);
        String json = Samples.string("tree-json", Samples.demo(demo.toAbsolutePath()));
        assertFalse(json.contains(demo.toAbsolutePath().getParent().toString()));
        assertFalse(json.contains("\r"));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import nu.validator.client.EmbeddedValidator;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every page before the Nu Html Checker, which judges by the HTML standard of the WHATWG. */
class HtmlValidityTest {
    static Stream<Arguments> pages() {
        List<Publication> all = new ArrayList<>(Samples.demos().stream().map(Samples::demo).toList());
        all.add(Samples.everything());
        all.add(Samples.demo(Samples.REFERENCE));
        all.add(Hostile.publication());
        all.add(Samples.text("procedure P check A \"Is it?\" { yes -> Nowhere }"));
        ProcedureFolder folder = new ProcedureFolder("Slipway", all, Set.of());
        return Stream.concat(all.stream().map(publication -> Arguments.of("card of " + publication.procedure().name().text(),
                Samples.publish("card-html", publication).bytes())), Stream.of("index-html", "quality-html").map(name ->
                        Arguments.of(name, ((FolderExport) Exports.named(name).orElseThrow()).publish(folder).bytes())));
    }

    private static List<String> judged(byte[] html) throws Exception {
        EmbeddedValidator validator = new EmbeddedValidator();
        validator.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
        String judged = validator.validate(new ByteArrayInputStream(html));
        List<String> errors = new ArrayList<>();
        for (JsonElement message : JsonParser.parseString(judged).getAsJsonObject().getAsJsonArray("messages")) {
            if (!message.getAsJsonObject().get("type").getAsString().equals("info")) {
                errors.add(message.getAsJsonObject().get("message").getAsString() + " at " + message.getAsJsonObject().get("extract"));
            }
        }
        return errors;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("pages")
    void should_be_valid(String what, byte[] html) throws Exception {
        assertEquals(List.of(), judged(html).stream().distinct().limit(5).toList());
    }

    @Test
    void should_find_what_is_wrong_with_a_page() throws Exception {
        assertFalse(judged("<!DOCTYPE html><html lang=\"en\"><title>T</title><p id=\"a\"><p id=\"a\"><table><div></table>"
                .getBytes(StandardCharsets.UTF_8)).isEmpty());
    }
}

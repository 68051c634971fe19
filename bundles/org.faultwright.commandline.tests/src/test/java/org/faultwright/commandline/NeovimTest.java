/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An editor from other hands, Neovim as Debian packages it, uses the language server as its user would. */
class NeovimTest {
    private static final String LIBRARY = """
            library Bench "Bench"
            instrument Meter "Hand meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits }
            """;
    private static final String TEXT = """
            procedure Fan "Fan rattles \u2013 \ud83c\udf00"
            uses Bench
            point P "TP1"
            point Spare "TP2"
            begin at Listen
            check Listen "Does it rattle?" {
                yes -> Volts
                no  -> Quiet
            }
            measure Volts "Rail" {
                dc voltage at P using Meter
                expects 24 V +/- 5 %
                source "FN-2 sheet 1"
                within  -> Quiet
                outside -> Quiet
            }
            conclude Quiet "Quiet" { finds nothing }
            """;
    private static final long SECONDS = 180;

    @TempDir
    static Path folder;
    private static JsonObject told;

    @BeforeAll
    static void anEditorAtWork() throws IOException, InterruptedException {
        Path script = folder.resolve("neovim.lua");
        try (InputStream words = NeovimTest.class.getResourceAsStream("neovim.lua")) {
            Files.copy(words, script);
        }
        Files.writeString(folder.resolve("Bench.procedure"), LIBRARY);
        Files.writeString(folder.resolve("Fan.procedure"), TEXT);
        Path report = folder.resolve("told.json");
        Path log = folder.resolve("neovim.log");
        ProcessBuilder editor = new ProcessBuilder("nvim", "--headless", "--clean", "-c", "luafile " + script).redirectErrorStream(true).redirectOutput(log.toFile());
        String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        editor.environment().put("FAULTWRIGHT_SERVE", new Gson().toJson(List.of(ProcessHandle.current().info().command().orElseThrow(),
                "-cp", classes, "org.faultwright.commandline.Faultwright", "serve")));
        editor.environment().put("FAULTWRIGHT_TEXT", folder.resolve("Fan.procedure").toString());
        editor.environment().put("FAULTWRIGHT_TOLD", report.toString());
        editor.environment().put("XDG_STATE_HOME", folder.resolve("state").toString());
        editor.environment().put("XDG_DATA_HOME", folder.resolve("data").toString());
        editor.environment().put("XDG_CACHE_HOME", folder.resolve("cache").toString());
        Process running = editor.start();
        boolean done = running.waitFor(SECONDS, TimeUnit.SECONDS);
        running.descendants().forEach(ProcessHandle::destroyForcibly);
        running.destroyForcibly();
        assertTrue(done && Files.exists(report), () -> "Neovim did not come to an end: " + log(log));
        told = JsonParser.parseString(Files.readString(report)).getAsJsonObject();
        assertFalse(told.has("failure"), () -> told + log(log));
    }

    private static String log(Path log) {
        try {
            return Files.readString(log, StandardCharsets.ISO_8859_1);
        } catch (IOException unreadable) {
            return unreadable.getMessage();
        }
    }

    @Test
    void should_be_told_what_is_found_when_the_text_opens() {
        assertEquals(List.of("unused-declaration 4"), findings("opened").stream().filter(one -> one.startsWith("unused-decl")).toList());
    }

    @Test
    void should_be_given_the_page_of_the_rule_with_each_finding() throws IOException {
        for (JsonElement finding : elements("opened")) {
            String rule = finding.getAsJsonObject().get("code").getAsString();
            Path page = Path.of(URI.create(finding.getAsJsonObject().get("page").getAsString()));
            assertEquals(folder.resolve("cache/faultwright/rules").resolve(rule + ".html"), page);
            assertTrue(Files.readString(page).contains("<h1>" + rule + "</h1>"), page.toString());
        }
    }

    @Test
    void should_be_told_of_a_wrong_unit_as_it_is_typed() {
        assertTrue(findings("typed").contains("wrong-dimension 12"), told.get("typed").toString());
    }

    @Test
    void should_be_offered_where_an_arrow_can_lead() {
        List<String> names = elements("completed").stream().map(JsonElement::getAsString).toList();
        assertTrue(names.containsAll(List.of("Listen", "Quiet")), names.toString());
        assertFalse(names.contains("Meter"), names.toString());
    }

    @Test
    void should_read_about_a_name_and_go_to_where_it_is_written() {
        assertTrue(told.get("hover").getAsString().contains("Hand meter"), told.get("hover").toString());
        assertEquals(JsonParser.parseString("{\"file\":\"Bench.procedure\",\"line\":2}"), told.get("went"));
    }

    @Test
    void should_rename_a_step_everywhere_and_nothing_else() {
        assertEquals(TEXT.replace("Volts", "Rail"), told.get("renamed").getAsString());
    }

    @Test
    void should_mend_what_was_found_and_hear_of_it_no_more() {
        assertEquals(TEXT.replace("Volts", "Rail").replace("point Spare \"TP2\"\n", ""), told.get("fixed").getAsString(), told.get("fix").getAsString());
        assertTrue(findings("after").stream().noneMatch(one -> one.startsWith("unused-decl")), told.get("after").toString());
    }

    @Test
    void should_lay_out_the_text() {
        String formatted = told.get("formatted").getAsString();
        assertTrue(formatted.contains("\ncheck Listen \"Does it rattle?\" {\n    yes -> Rail\n"), formatted);
    }

    @Test
    void should_be_told_what_the_server_does_not_offer() {
        // MethodNotFound, Language Server Protocol 3.17, ErrorCodes
        assertEquals(-32601, told.get("refused").getAsInt());
    }

    private static List<String> findings(String when) {
        return elements(when).stream().map(JsonElement::getAsJsonObject).map(one -> one.get("code").getAsString() + " " + one.get("line").getAsInt()).toList();
    }

    private static List<JsonElement> elements(String when) {
        return StreamSupport.stream(((JsonArray) told.get(when)).spliterator(), false).toList();
    }
}

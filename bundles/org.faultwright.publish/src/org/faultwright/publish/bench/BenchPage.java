/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import com.google.gson.Gson;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.PictureFile;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Scope;
import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.tree.TreeJson;

/**
 * The procedure as a page that walks it, one step at a time, on a tablet, a phone or the bench's computer. One file that fetches
 * nothing: the tree stands in it as data, and one script of ours, which the page names by its sum, is all that runs.
 */
public final class BenchPage implements ProcedureExport {
    /** The address that names the schema of the records that the page saves; the schema itself is a resource of this bundle. */
    public static final String RECORD_SCHEMA = "urn:faultwright:walk-record:1";
    private static final Pattern REMARK = Pattern.compile("(?m)^\\s*/\\*(?s:.*?)\\*/\\s*$");
    private static final Gson COMPACT = new Gson();

    /** The schema that records follow, JSON Schema 2020-12. */
    public static String recordSchema() {
        return resource("walk-record-1.schema.json");
    }

    /** What walks the tree, without the page: plain JavaScript that needs no library and no browser. */
    public static String walkScript() {
        return resource("walk.js");
    }

    /** What writes and reads records, on top of {@link #walkScript()}; without the page too. */
    public static String recordScript() {
        return resource("record.js");
    }

    @Override
    public String name() {
        return "bench-html";
    }

    @Override
    public String title() {
        return "Bench page, HTML";
    }

    @Override
    public PublishedFiles publish(Publication publication) {
        Map<String, String> pictures = pictures(TypesetPlan.of(publication));
        Page page = new Page(Medium.SCREEN, publication.title(), "Bench page of " + publication.procedure().name().text() + ", "
                + publication.revision());
        page.head().add("meta").set("name", "color-scheme").set("content", "light dark");
        Tag body = page.body();
        body.add("div").id("app").with("main", "still", main -> still(main, publication));
        body.add("p", "told").id("told").set("role", "status");
        byte[] html = HtmlText.of(page, bare(resource("bench.css")), bare(walkScript()) + bare(recordScript()) + bare(resource("bench.js")),
                data(publication, pictures), !pictures.isEmpty());
        return new PublishedFiles(FileName.of(publication.procedure(), ".bench.html"), "text/html", html);
    }

    /** What stands here until the script runs, and stays where none may. */
    private static void still(Tag main, Publication publication) {
        main.say("h1", "", publication.title());
        main.say("p", "revision", publication.revision());
        main.say("p", "strong", Caution.SENTENCES);
        main.say("p", "", "This page walks the procedure with a script of its own. Where it stays like this, scripts are switched off: "
                + "switch them on for this file, or work by the bench card.");
    }

    /** The tree without what only its author needs, and each picture once. */
    private static Map<String, String> data(Publication publication, Map<String, String> pictures) {
        JsonObject tree = TreeJson.tree(publication);
        tree.remove("examples");
        tree.getAsJsonObject("findings").remove("list");
        // The page names instruments and reads likelihoods: what it was computed from stands in the tree itself.
        strip(tree, "instruments", "ranges");
        strip(tree, "faults", "shows");
        Stream<JsonElement> routines = tree.has("routines") ? tree.getAsJsonArray("routines").asList().stream() : Stream.of();
        Stream.concat(Stream.of(tree), routines.map(JsonElement::getAsJsonObject)).flatMap(graph -> graph.getAsJsonArray("steps").asList().stream())
                .map(JsonElement::getAsJsonObject).forEach(step -> step.remove("uncertainty"));
        Map<String, String> data = new LinkedHashMap<>();
        data.put("tree", COMPACT.toJson(tree));
        data.put("pictures", COMPACT.toJson(pictures));
        return data;
    }

    private static void strip(JsonObject tree, String list, String member) {
        if (tree.has(list)) {
            tree.getAsJsonArray(list).forEach(one -> one.getAsJsonObject().remove(member));
        }
    }

    /** By the name that the tree calls each by; one that cannot be shown is told in words alone. */
    private static Map<String, String> pictures(CardPlan plan) {
        Map<String, String> pictures = new LinkedHashMap<>();
        Scope scope = plan.scope();
        Stream.of(plan.steps().flatMap(step -> step.frame().pictures().stream()), scope.points().stream().map(Point::pictures).flatMap(all -> all.stream()),
                scope.indicators().stream().map(Indicator::pictures).flatMap(all -> all.stream()),
                scope.parts().stream().map(Part::pictures).flatMap(all -> all.stream())).flatMap(all -> all).forEach(picture -> add(pictures, picture));
        return pictures;
    }

    private static void add(Map<String, String> pictures, Picture picture) {
        PictureFile file = PictureFile.of(picture);
        if (file.problem().isEmpty()) {
            pictures.putIfAbsent(picture.file().value(), file.asAddress());
        }
    }

    /** Without indents and lines of remarks: a page is copied to many devices. No string or pattern of ours runs over a line. */
    private static String bare(String code) {
        return REMARK.matcher(code).replaceAll("").lines().map(String::strip).filter(line -> !line.isEmpty() && !line.startsWith("// "))
                .map(line -> line + "\n").collect(Collectors.joining());
    }

    private static String resource(String name) {
        try (InputStream in = BenchPage.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the file " + name + " is missing from the bundle");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

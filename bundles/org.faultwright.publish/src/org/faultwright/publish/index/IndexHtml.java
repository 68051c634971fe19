/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.index;

import java.text.Collator;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Published;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.StyleSheet;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.text.PublishedText;

/** The front page of a folder of cards: every procedure with its status and what leads to it, searched by those words. */
public final class IndexHtml implements FolderExport {
    private static final String QUALITY = "quality.html";

    @Override
    public String name() {
        return "index-html";
    }

    @Override
    public String title() {
        return "Index of procedures, HTML";
    }

    @Override
    public Published publish(ProcedureFolder folder) {
        Page page = new Page(Medium.SCREEN, folder.title(), "Procedures of " + folder.title());
        Tag main = page.body().add("main");
        main.say("p", "what", "Procedures");
        main.say("h1", "", folder.title());
        main.add("p", "caution").say("b", "", Caution.FIRST).space().text(Caution.TRAINED);
        List<Publication> sorted = folder.procedures().stream().sorted(byEquipment()).toList();
        if (folder.files().contains(QUALITY)) {
            main.add("p").file(QUALITY).text("Quality report of these procedures");
        }
        search(main);
        procedures(main, sorted, folder);
        gone(main, folder);
        return new Published("index.html", "text/html",
                HtmlText.of(page, StyleSheet.of("page", "screen", "list", "index"), StyleSheet.script("search")));
    }

    /** Shown by the script alone: without it the page is a list to be read. */
    private static void search(Tag main) {
        Tag search = main.add("p", "searching").id("searching").set("hidden", "hidden");
        search.add("label").set("for", "search").text("What does the customer say, what is it, what does the lamp show?");
        search.add("input").id("search").set("type", "search").set("autocomplete", "off");
        search.add("span", "found").id("found").set("role", "status");
    }

    private static void procedures(Tag main, List<Publication> sorted, ProcedureFolder folder) {
        main.say("h2", "", sorted.size() == 1 ? "One procedure" : sorted.size() + " procedures");
        Tag rows = table(main, "Equipment", "Procedure, and what leads to it", "Revision", "Files").id("procedures");
        for (Publication publication : sorted) {
            Tag row = rows.add("tr");
            row.add("th").set("scope", "row").text(equipment(publication));
            Tag cell = row.add("td");
            title(cell, publication, folder);
            IndexWords.of(publication.procedure()).forEach((what, words) ->
                    cell.add("p", "words").say("b", "", what + ":").space().text(words));
            since(cell, publication, folder);
            status(row.add("td"), publication);
            files(row.add("td"), publication, folder);
        }
    }

    private static void since(Tag cell, Publication publication, ProcedureFolder folder) {
        folder.since().ifPresent(release -> cell.add("p", "words").say("b", "", "Since the last release:").space()
                .text(release.of(publication.procedure().name().text()).map(earlier -> SinceRelease.of(earlier, publication.procedure()).inShort())
                        .orElse("new")));
    }

    private static void gone(Tag main, ProcedureFolder folder) {
        Set<String> here = folder.procedures().stream().map(one -> one.procedure().name().text()).collect(Collectors.toSet());
        List<Procedure> gone = folder.since().stream().flatMap(release -> release.procedures().stream())
                .filter(earlier -> !here.contains(earlier.name().text())).toList();
        if (!gone.isEmpty()) {
            main.say("h2", "", "Gone since the last release");
            Tag list = main.add("ul");
            gone.forEach(earlier -> list.say("li", "", PlainText.line(earlier.title().isBlank() ? earlier.name().text() : earlier.title())));
        }
    }

    private static Tag table(Tag main, String... columns) {
        Tag table = main.add("table", "list");
        Tag head = table.add("thead").add("tr");
        for (String column : columns) {
            head.add("th").set("scope", "col").text(column);
        }
        return table.add("tbody");
    }

    private static void title(Tag cell, Publication publication, ProcedureFolder folder) {
        String card = FileName.of(publication.procedure(), ".html");
        if (folder.files().contains(card)) {
            cell.file(card).text(publication.title());
        } else {
            cell.text(publication.title());
        }
    }

    private static void status(Tag cell, Publication publication) {
        cell.text(publication.revision());
        publication.dated().ifPresent(day -> cell.text(", " + day));
        if (publication.hasErrors()) {
            int open = publication.errors().size();
            cell.add("p").say("b", "open", open == 1 ? "1 open error" : open + " open errors");
        } else if (publication.status() != Revision.Status.RELEASED) {
            cell.add("p").say("b", "", "not released");
        }
    }

    private static void files(Tag cell, Publication publication, ProcedureFolder folder) {
        String gap = "";
        for (String ending : List.of(".html", ".bench.html", ".pdf", ".a5.pdf", ".across.pdf", ".letter.pdf", ".chart.pdf", ".svg", ".tree.json", PublishedText.ENDING)) {
            String file = FileName.of(publication.procedure(), ending);
            if (folder.files().contains(file)) {
                cell.text(gap);
                if (!gap.isEmpty()) {
                    cell.space();
                }
                cell.file(file).text(kind(ending));
                gap = ",";
            }
        }
    }

    private static String kind(String ending) {
        return switch (ending) {
            case ".html" -> "card";
            case ".bench.html" -> "bench page";
            case ".pdf" -> "print";
            case ".a5.pdf" -> "A5";
            case ".across.pdf" -> "A4 across";
            case ".letter.pdf" -> "Letter";
            case ".chart.pdf" -> "chart to print";
            case ".svg" -> "chart";
            case PublishedText.ENDING -> "text";
            default -> "tree";
        };
    }

    private static String equipment(Publication publication) {
        return publication.procedure().equipment().map(equipment -> PlainText.line(equipment.title()) + boards(equipment))
                .orElse("");
    }

    private static String boards(Equipment equipment) {
        return equipment.boards().isEmpty() ? "" : equipment.boards().stream().map(Written::value)
                .map(PlainText::line).collect(Collectors.joining(", ", " (", ")"));
    }

    private static Comparator<Publication> byEquipment() {
        Comparator<String> words = alphabetical();
        return Comparator.comparing(IndexHtml::equipment, words).thenComparing(Publication::title, words)
                .thenComparing(publication -> publication.procedure().name().text());
    }

    /** As a reader looks for words, small and capital letters together; the same on every machine. */
    private static Comparator<String> alphabetical() {
        Collator collator = Collator.getInstance(Locale.ROOT);
        Comparator<String> words = collator::compare;
        return words.thenComparing(Comparator.naturalOrder());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.index;

import java.text.Collator;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.compare.MatchedProcedures;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.StyleSheet;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.ComparisonPage;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.text.PublishedText;

/** The front page of a folder of cards: every procedure with its status and what leads to it, searched by those words. */
public final class IndexHtml implements FolderExport {
    /** What a file is for, by its ending. */
    private static final Map<String, Map<String, String>> FILES = files();
    private static final Map<String, String> REPORTS = inOrder("quality.html", "Quality report on the screen", "quality.pdf", "Quality report to print and sign");

    @Override
    public String name() {
        return "index-html";
    }

    @Override
    public String title() {
        return "Index of procedures, HTML";
    }

    @Override
    public PublishedFiles publish(ProcedureFolder folder) {
        Page page = new Page(Medium.SCREEN, "Procedures: " + folder.title(), "Procedures of " + folder.title());
        Tag main = page.body().add("main");
        main.say("p", "what", folder.title());
        main.say("h1", "", "Procedures");
        main.add("p", "caution").say("b", "", Caution.FIRST).space().text(Caution.TRAINED);
        List<Publication> sorted = folder.procedures().stream().sorted(byEquipment()).toList();
        search(main);
        Optional<MatchedProcedures> compared = folder.compared();
        changed(main, folder);
        leftOut(main, folder);
        procedures(main, sorted, folder, compared);
        gone(main, compared);
        report(main, folder);
        return new PublishedFiles("index.html", "text/html",
                HtmlText.of(page, StyleSheet.of("page", "screen", "list", "index"), StyleSheet.script("search")));
    }

    /** Shown by the script alone: without it the page is a list to be read. */
    private static void search(Tag main) {
        Tag search = main.add("p", "searching").id("searching").set("hidden", "hidden");
        search.add("label").set("for", "search").text("What does the customer say, what is it, what does the lamp show?");
        search.add("input").id("search").set("type", "search").set("autocomplete", "off");
        search.add("span", "found").id("found").set("role", "status");
    }

    private static void procedures(Tag main, List<Publication> sorted, ProcedureFolder folder, Optional<MatchedProcedures> compared) {
        main.say("h2", "", sorted.size() == 1 ? "One procedure" : sorted.size() + " procedures");
        Tag list = main.add("div", "procedures").id("procedures");
        for (Publication publication : sorted) {
            Tag item = list.add("article");
            Tag named = item.add("div", "named");
            title(named.add("h3"), publication, folder);
            String equipment = equipment(publication);
            if (!equipment.isEmpty()) {
                named.say("p", "equipment", equipment);
            }
            status(named, publication);
            files(named, publication, folder);
            Tag words = item.add("div", "leads");
            IndexWords.of(publication.procedure()).forEach((what, all) ->
                    words.add("p", "words").say("b", "", what + ":").space().text(all));
            since(words, publication, compared);
        }
    }

    private static void since(Tag cell, Publication publication, Optional<MatchedProcedures> compared) {
        compared.ifPresent(same -> cell.add("p", "words").say("b", "", "Since the last release:").space()
                .text(same.earlier(publication.procedure()).map(earlier -> SinceRelease.of(earlier, publication.procedure()))
                        .map(since -> since.renamedFrom().map(name -> "renamed, was \u201C" + name + "\u201D. ").orElse("") + since.inShort()).orElse("new")));
    }

    /** Only where the page is there: an index of other forms leads to nothing that was not written. */
    private static void changed(Tag main, ProcedureFolder folder) {
        ComparisonPage.in(folder).ifPresent(file -> main.add("p").file(file).text("What changed since the last release"));
    }

    /** Somebody who looks for one of them must not take it for gone. */
    private static void leftOut(Tag main, ProcedureFolder folder) {
        if (!folder.leftOut().isEmpty()) {
            main.say("h2", "", "Left out because of open errors");
            Tag list = main.add("ul");
            folder.leftOut().forEach(one -> list.say("li", "", title(one.procedure()) + ": " + one.why()));
        }
    }

    private static void gone(Tag main, Optional<MatchedProcedures> compared) {
        List<Procedure> gone = compared.map(MatchedProcedures::gone).orElse(List.of());
        if (!gone.isEmpty()) {
            main.say("h2", "", "Gone since the last release");
            Tag list = main.add("ul");
            gone.forEach(earlier -> list.say("li", "", title(earlier)));
        }
    }

    private static String title(Procedure procedure) {
        return PlainText.line(procedure.title().isBlank() ? procedure.name().text() : procedure.title());
    }

    private static void report(Tag main, ProcedureFolder folder) {
        List<String> there = REPORTS.keySet().stream().filter(folder.files()::contains).toList();
        if (!there.isEmpty()) {
            main.say("h2", "", "For whoever checks and signs");
            Tag list = main.add("ul", "reports");
            there.forEach(file -> list.add("li").file(file).text(REPORTS.get(file)));
        }
    }

    private static void title(Tag cell, Publication publication, ProcedureFolder folder) {
        String card = FileName.of(publication.procedure(), ".html");
        if (folder.files().contains(card)) {
            cell.file(card).text(publication.title());
        } else {
            cell.text(publication.title());
        }
    }

    /** In words that tell whether the card may be worked by. */
    private static void status(Tag item, Publication publication) {
        Tag line = item.add("p", "status");
        line.text(publication.revision() + publication.dated().map(day -> ", " + day).orElse(""));
        if (publication.hasErrors()) {
            int open = publication.errors().size();
            line.text(":").space().say("b", "open", (open == 1 ? "1 open error" : open + " open errors") + ", do not work by it");
        } else if (publication.status() == Revision.Status.DRAFT) {
            line.text(":").space().say("b", "open", "not released, do not work by it");
        } else if (publication.status() == Revision.Status.REVIEWED) {
            line.text(": not released yet");
        }
    }

    /** Each called by what it is for. */
    private static void files(Tag item, Publication publication, ProcedureFolder folder) {
        Map<String, List<String>> there = new LinkedHashMap<>();
        FILES.forEach((what, endings) -> {
            List<String> files = endings.keySet().stream().filter(ending -> folder.files().contains(FileName.of(publication.procedure(), ending))).toList();
            if (!files.isEmpty()) {
                there.put(what, files);
            }
        });
        there.forEach((what, endings) -> {
            Tag line = item.add("p", "files");
            line.text(what + ":").space();
            for (int i = 0; i < endings.size(); i++) {
                String ending = endings.get(i);
                line.file(FileName.of(publication.procedure(), ending)).text(FILES.get(what).get(ending));
                if (i + 1 < endings.size()) {
                    line.text(",").space();
                }
            }
        });
    }

    private static Map<String, Map<String, String>> files() {
        Map<String, Map<String, String>> files = new LinkedHashMap<>();
        files.put("At the bench", inOrder(".bench.html", "step by step, on a tablet or phone", ".html", "whole card on the screen"));
        files.put("To print", inOrder(".pdf", "card, A4", ".a5.pdf", "card, A5 (two pages go on a sheet of A4)", ".across.pdf", "card, A4 across, two columns", ".letter.pdf", "card, Letter", ".chart.pdf", "chart, A4"));
        files.put("Besides", inOrder(".svg", "chart as a picture", PublishedText.ENDING, "text that it was made from", ".tree.json", "data for other programs"));
        return files;
    }

    private static Map<String, String> inOrder(String... pairs) {
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put(pairs[i], pairs[i + 1]);
        }
        return map;
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

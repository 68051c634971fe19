/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.LikelyFaults;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.ReadingWay;

/** Prints for each procedure how many pages its card has, on A4 or other paper, and how often its likeliest repairs turn the page. */
public final class CardStudy {
    private static final int LIKELIEST = 3;

    private static final String PAPER = "--paper=";

    private CardStudy() {
    }

    /** @param arguments folders of procedures, or procedures; in front of them {@code --ways} prints every way with its pages, and {@code --paper=LETTER} takes other paper */
    public static void main(String[] arguments) throws IOException, PublishingRefused {
        List<String> options = Stream.of(arguments).takeWhile(one -> one.startsWith("--")).toList();
        boolean ways = options.contains("--ways");
        Paper paper = options.stream().filter(one -> one.startsWith(PAPER)).map(one -> paper(one.substring(PAPER.length()))).findFirst().orElse(Paper.A4);
        System.out.printf("%-28s %6s %6s %6s   %s%n", "procedure", "steps", "pages", "a page", "page turns of the three likeliest repairs");
        int missed = 0;
        int all = 0;
        for (String argument : List.of(arguments).subList(options.size(), arguments.length)) {
            for (Path file : procedures(Path.of(argument))) {
                for (int turns : study(file, paper, ways)) {
                    missed += turns > 4 ? 1 : 0;
                    all++;
                }
            }
        }
        System.out.printf("%d of %d repairs turn the page more than four times%n", missed, all);
    }

    private static Paper paper(String name) {
        return Stream.of(Paper.values()).filter(one -> one.name().equalsIgnoreCase(name)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("There is no paper \"" + name + "\"; there are " + List.of(Paper.values()) + "."));
    }

    private static List<Path> procedures(Path given) throws IOException {
        if (!Files.isDirectory(given)) {
            return List.of(given);
        }
        try (Stream<Path> files = Files.list(given)) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }

    private static List<Integer> study(Path file, Paper paper, boolean ways) throws IOException, PublishingRefused {
        Procedure procedure = (Procedure) ProcedureReader.overFiles().read(file);
        Publication publication = Publication.of(new FullCheck(Optional.empty()).check(procedure), Drafts.ALLOWED);
        CardPlan plan = TypesetPlan.of(publication);
        try (CardPages pages = CardPages.open(new CardPdf(paper).publish(publication).bytes())) {
            Map<String, CardPages.Place> places = pages.printed();
            List<List<PlacedStep>> read = plan.likely().cases().stream().limit(LIKELIEST).map(one -> ReadingWay.of(plan, one)).toList();
            List<Integer> turns = read.stream().map(way -> TypesetPlan.turns(way, placed -> places.get(placed.label()).page())).toList();
            long steps = plan.steps().count();
            System.out.printf(Locale.ROOT, "%-28s %6d %6d %6.1f   %s%n", procedure.name().text(), procedure.writtenSteps().size(), pages.count(),
                    (double) steps / pages.count(), turns.stream().map(String::valueOf).collect(Collectors.joining(" ")));
            if (ways) {
                read.forEach(way -> System.out.println("    " + way.stream().map(placed -> placed.label() + " p." + (places.get(placed.label()).page() + 1))
                        .collect(Collectors.joining(", "))));
            }
            return turns;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.analysis.reference.RandomProcedures;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/**
 * Procedures for the study of what is written, numbered and the same each time: small ones at random, those of the demo with one or two defects,
 * fault tables at random, and what is drafted from such tables with its times changed.
 */
final class StudyTexts {
    private static final long SEED = 20261126;
    private final List<Specimen> demo;
    private final ProcedureReader reader = ProcedureReader.overFiles();

    /** @param demo sound procedures to put defects into */
    StudyTexts(List<Specimen> demo) {
        this.demo = List.copyOf(demo);
    }

    SourceText text(int number) {
        Random random = new Random(SEED + number);
        return switch (number % 4) {
            case 0 -> new SourceText("Small.procedure", new RandomProcedures(SEED + number).next().text());
            case 1 -> flawed(demo.get(number / 4 % demo.size()), random);
            case 2 -> new SourceText("Table.procedure", new RandomTables(SEED + number).next());
            default -> drafted(number);
        };
    }

    private SourceText drafted(int number) {
        RandomTables tables = new RandomTables(SEED + number);
        SourceText table = new SourceText("Table.procedure", tables.next());
        return TriedDraft.of((Procedure) reader.read(table), reader::read, new Checker()).text()
                .map(text -> new SourceText(table.name(), tables.otherTimes(text))).orElse(table);
    }

    /** With one defect, or two that do not touch. */
    private SourceText flawed(Specimen specimen, Random random) {
        String own = specimen.procedure().source().name();
        List<Fix.Edit> edits = new ArrayList<>();
        Set<Integer> touched = new HashSet<>();
        int wanted = 1 + random.nextInt(2);
        List<Kind> kinds = MutationStudy.kinds();
        for (int tried = 0; tried < 40 && wanted > 0; tried++) {
            List<Seed> seeds = kinds.get(random.nextInt(kinds.size())).seeds().apply(specimen)
                    .filter(seed -> seed.texts().keySet().equals(Set.of(own))).toList();
            if (seeds.isEmpty()) {
                continue;
            }
            Seed seed = seeds.get(random.nextInt(seeds.size()));
            Set<Integer> places = places(seed);
            if (places.stream().noneMatch(touched::contains)) {
                touched.addAll(places);
                edits.addAll(seed.edits());
                wanted--;
            }
        }
        return new SourceText(own, edits.isEmpty() ? specimen.procedure().source().content() : new Fix("Seed defects", edits).applied());
    }

    private static Set<Integer> places(Seed seed) {
        TreeMap<Integer, Integer> places = new TreeMap<>();
        seed.edits().forEach(edit -> {
            for (int at = edit.at().offset() - 1; at <= edit.at().end(); at++) {
                places.put(at, at);
            }
        });
        return places.keySet();
    }
}

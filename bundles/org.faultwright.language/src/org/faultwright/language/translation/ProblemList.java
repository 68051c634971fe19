/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.faultwright.procedure.DamagedBlock;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;

/** The problems of one text, in reading order and in a number that a person can read. */
final class ProblemList {
    private static final int MOST = 100;
    private static final Comparator<ReadingProblem> READING_ORDER = Comparator.comparingInt(problem -> problem.at().offset());

    private ProblemList() {
    }

    /** @param blocks finds the block that an offset lies in */
    static List<ReadingProblem> inReadingOrder(ModelSource passage, IntFunction<Optional<DamagedBlock>> blocks) {
        List<ReadingProblem> ordered = withoutEchoes(passage).stream()
                .map(problem -> problem.block().isPresent() ? problem
                        : blocks.apply(problem.at().offset()).map(problem::in).orElse(problem)).toList();
        ordered = withoutEchoes(ordered, passage.unreadable());
        if (ordered.size() <= MOST) {
            return List.copyOf(ordered);
        }
        SourceRange next = ordered.get(MOST).at();
        List<ReadingProblem> first = new ArrayList<>(ordered.subList(0, MOST));
        first.add(new ReadingProblem((ordered.size() - MOST)
                + " more places from here on could not be read; mend the first ones and check again.", next));
        return List.copyOf(first);
    }

    /** Of what does not fit in a line, the first only, and nothing else in that line: it most likely follows from it. */
    private static List<ReadingProblem> withoutEchoes(ModelSource passage) {
        Map<Integer, ReadingProblem> firstInLine = new TreeMap<>();
        passage.unreadable().stream().sorted(READING_ORDER).forEach(problem -> firstInLine.putIfAbsent(problem.at().line(), problem));
        List<ReadingProblem> ordered = new ArrayList<>(firstInLine.values());
        passage.problems().stream().filter(problem -> !firstInLine.containsKey(problem.at().line())).forEach(ordered::add);
        ordered.sort(READING_ORDER);
        return ordered;
    }

    /** Behind the first words of a block that do not fit, whatever else is wrong in it most likely follows from them. */
    private static List<ReadingProblem> withoutEchoes(List<ReadingProblem> ordered, List<ReadingProblem> unreadable) {
        Set<SourceRange> unfit = unreadable.stream().map(ReadingProblem::at).collect(Collectors.toSet());
        Set<Integer> damaged = new HashSet<>();
        List<ReadingProblem> first = new ArrayList<>();
        for (ReadingProblem problem : ordered) {
            Optional<Integer> block = problem.block().map(in -> in.at().offset());
            if (block.isEmpty() || !damaged.contains(block.get())) {
                first.add(problem);
            }
            if (unfit.contains(problem.at()) && problem.at().length() > 0) {
                block.ifPresent(damaged::add);
            }
        }
        return first;
    }
}

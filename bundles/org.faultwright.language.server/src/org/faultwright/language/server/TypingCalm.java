/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/**
 * What of the findings is told while somebody writes. Half a line is the normal state of a text: what it makes of its neighbours
 * is not told before a pause, and what was told before is not taken back only because half a line cannot be read.
 */
final class TypingCalm {
    private record Key(String rule, String message) {
        static Key of(Finding finding) {
            return new Key(finding.rule(), finding.message());
        }
    }

    private Optional<SourceText> last = Optional.empty();
    private Optional<SourceRange> written = Optional.empty();
    private List<Finding> told = List.of();
    private Map<Key, Integer> settled = Map.of();

    /**
     * @param found   what stands in the text
     * @param waiting what may only follow from what cannot be read
     */
    synchronized List<Finding> whileWriting(Document document, List<Finding> found, List<Finding> waiting) {
        SourceText now = document.source();
        Optional<Integer> changed = last.map(before -> firstDifference(before.content(), now.content()));
        boolean same = changed.isPresent() && changed.get() == now.content().length() && last.get().content().length() == changed.get();
        last = Optional.of(now);
        if (changed.isEmpty() || same) {
            told = found;
            return found;
        }
        SourceRange block = blockAt(document, changed.get());
        if (written.isEmpty() || written.get().offset() != block.offset()) {
            settled = settledBy(told);
        }
        written = Optional.of(block);
        Map<Key, Integer> before = new HashMap<>(settled);
        List<Finding> answer = new ArrayList<>();
        found.stream().filter(finding -> isIn(block, finding) | take(before, finding)).forEach(answer::add);
        waiting.stream().filter(finding -> take(before, finding)).forEach(answer::add);
        answer.sort(Checker.READING_ORDER);
        told = List.copyOf(answer);
        return told;
    }

    /** Everything is told now, and counts as known from here on. */
    synchronized void pause(SourceText text, List<Finding> all) {
        if (last.isPresent() && last.get() == text) {
            told = all;
            settled = settledBy(all);
            written = Optional.empty();
        }
    }

    private static Map<Key, Integer> settledBy(List<Finding> findings) {
        Map<Key, Integer> counted = new HashMap<>();
        findings.forEach(finding -> counted.merge(Key.of(finding), 1, Integer::sum));
        return counted;
    }

    private static boolean take(Map<Key, Integer> before, Finding finding) {
        Integer left = before.getOrDefault(Key.of(finding), 0);
        before.put(Key.of(finding), left - 1);
        return left > 0;
    }

    private static boolean isIn(SourceRange block, Finding finding) {
        return block.offset() <= finding.at().offset() && finding.at().offset() <= block.end();
    }

    private static int firstDifference(String before, String now) {
        int most = Math.min(before.length(), now.length());
        for (int i = 0; i < most; i++) {
            if (before.charAt(i) != now.charAt(i)) {
                return i;
            }
        }
        return most;
    }

    /** The smallest declaration or step that holds the offset; between them, from the end of one to the beginning of the next. */
    private static SourceRange blockAt(Document document, int offset) {
        List<SourceRange> blocks = blocks(document);
        int start = 0;
        int end = document.source().content().length();
        Optional<SourceRange> smallest = Optional.empty();
        for (SourceRange block : blocks) {
            if (block.offset() <= offset && offset <= block.end()) {
                smallest = smallest.filter(one -> one.length() <= block.length()).or(() -> Optional.of(block));
            } else if (block.end() < offset) {
                start = Math.max(start, block.end());
            } else if (block.offset() > offset) {
                end = Math.min(end, block.offset());
            }
        }
        return smallest.orElse(new SourceRange(document.source(), start, Math.max(0, end - 1 - start)));
    }

    private static List<SourceRange> blocks(Document document) {
        List<SourceRange> blocks = new ArrayList<>();
        document.own().all().forEach(one -> blocks.add(one.at()));
        document.graphs().forEach(graph -> graph.writtenSteps().forEach(step -> blocks.add(step.at())));
        if (document instanceof Procedure procedure) {
            procedure.faults().forEach(fault -> blocks.add(fault.at()));
            procedure.examples().forEach(example -> blocks.add(example.at()));
        }
        document.problems().stream().map(ReadingProblem::block).flatMap(Optional::stream).forEach(block -> blocks.add(block.at()));
        blocks.sort(Comparator.comparingInt(SourceRange::offset));
        return blocks;
    }
}

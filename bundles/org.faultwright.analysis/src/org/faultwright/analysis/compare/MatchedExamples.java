/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.Example;

/**
 * Which example of today is which of earlier, where it is called otherwise: it shows the same, or it is a case of the same fault with the same end.
 * Of several such the two that have most in common are one. Most examples are called by what they say, so that every change of them changes that too.
 */
final class MatchedExamples {
    private record Pair(Example was, Example now, int common) {
    }

    private final RecordValues values;
    private final Map<Example, Example> today = new IdentityHashMap<>();

    MatchedExamples(RecordValues values, List<Example> was, List<Example> now) {
        this.values = values;
        List<Example> gone = without(was, now);
        List<Example> fresh = without(now, was);
        List<Pair> pairs = new ArrayList<>();
        gone.forEach(one -> fresh.stream().filter(other -> isLike(one, other)).forEach(other -> pairs.add(new Pair(one, other, common(one, other)))));
        pairs.sort(Comparator.comparingInt(Pair::common).reversed());
        for (Pair pair : pairs) {
            if (!today.containsKey(pair.was()) && today.values().stream().noneMatch(taken -> taken == pair.now())) {
                today.put(pair.was(), pair.now());
            }
        }
    }

    /** An example of earlier as it is called today. */
    Example called(Example was) {
        Example now = today.get(was);
        return now == null ? was : new Example(was.variation(), now.title(), was.of(), was.shows(), was.endsAt(), was.within(), was.at());
    }

    /** Of those that have a title of their own, what it was earlier by what it is today. */
    Map<Example, Example> renamed() {
        Map<Example, Example> renamed = new IdentityHashMap<>(today);
        renamed.entrySet().removeIf(pair -> !pair.getKey().isTitled() || !pair.getValue().isTitled());
        return renamed;
    }

    private List<Example> without(List<Example> these, List<Example> others) {
        Set<String> titles = others.stream().map(other -> other.title().text()).collect(Collectors.toSet());
        return these.stream().filter(one -> !titles.contains(one.title().text())).toList();
    }

    private boolean isLike(Example was, Example now) {
        boolean sameCourse = !was.shows().isEmpty() && values.same(was.shows(), now.shows());
        boolean sameEnd = (was.of().isPresent() || was.endsAt().isPresent()) && values.same(was.of(), now.of()) && values.same(was.endsAt(), now.endsAt());
        return sameCourse || sameEnd;
    }

    private int common(Example was, Example now) {
        int shown = (int) was.shows().stream().filter(showing -> now.shows().stream().anyMatch(like -> values.same(showing, like))).count();
        return 2 * shown - was.shows().size() - now.shows().size();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.trace.FaultBehaviour;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/**
 * Proposes an example for each outcome and conclusion that none takes yet: the shortest way to it, and
 * from there the shortest way to a conclusion, by ways not yet tried where there is a choice.
 */
public final class MissingExamples {
    private static final int MOST = 40;

    private final LinkedSteps tree;
    private final StateGraph all;
    private final Set<LinkedSteps.Arrow> open = new LinkedHashSet<>();
    private final Set<Integer> openEnds = new LinkedHashSet<>();
    private final Procedure procedure;
    private final FaultTable table;

    private MissingExamples(Procedure procedure, ExampleCoverage coverage) {
        this.procedure = procedure;
        this.table = FaultTable.of(procedure);
        this.tree = coverage.tree();
        this.all = new StateGraph(tree, FaultBehaviour.anything(tree));
        Set<String> untried = coverage.untried().stream().map(ExampleCoverage.StepOutcome::toString).collect(Collectors.toSet());
        tree.used().stream().filter(step -> tree.arrows(step).size() > 1).forEach(step -> tree.arrows(step).stream()
                .filter(arrow -> untried.contains(new ExampleCoverage.StepOutcome(tree.step(step), arrow.key()).toString()) && arrow.to() != LinkedSteps.NOWHERE).forEach(open::add));
        coverage.unreached().forEach(end -> openEnds.add(tree.number(end.name().text()).orElseThrow()));
    }

    /** One fix that writes all of them at the end of the text; absent where no way leads to a conclusion. */
    public static Optional<Fix> fix(Subject subject, ExampleCoverage coverage) {
        List<String> texts = texts(subject.procedure().orElseThrow(), coverage);
        String content = subject.document().source().content();
        SourceRange end = new SourceRange(subject.document().source(), content.length(), 0);
        String lead = content.endsWith("\n") ? "" : "\n";
        return texts.isEmpty() ? Optional.empty() : Optional.of(Fix.replacing(texts.size() == 1 ? "Add the missing example"
                : "Add " + texts.size() + " missing examples", end, lead + String.join("", texts)));
    }

    /** The examples as text, one each. */
    public static List<String> texts(Procedure procedure, ExampleCoverage coverage) {
        return new MissingExamples(procedure, coverage).texts();
    }

    private List<String> texts() {
        List<String> texts = new ArrayList<>();
        Set<String> titles = procedure.examples().stream().map(example -> example.title().text()).collect(Collectors.toSet());
        while (all.isComplete() && all.size() > 0 && texts.size() < MOST && !(open.isEmpty() && openEnds.isEmpty())) {
            Optional<List<StateGraph.Move>> way = nextWay();
            if (way.isEmpty()) {
                break;
            }
            texts.add(text(way.get(), titles));
            way.get().forEach(move -> open.remove(move.shown().arrow()));
            openEnds.remove(endOf(way.get()));
        }
        return texts;
    }

    private int endOf(List<StateGraph.Move> way) {
        return all.state(way.get(way.size() - 1).to().orElseThrow()).step();
    }

    private Optional<List<StateGraph.Move>> nextWay() {
        Optional<List<StateGraph.Move>> first = way(0, move -> open.contains(move.shown().arrow()) && move.to().isPresent()
                || move.to().filter(to -> openEnds.contains(all.state(to).step())).isPresent());
        return first.flatMap(begun -> {
            List<StateGraph.Move> whole = new ArrayList<>(begun);
            while (!all.isEnding(whole.get(whole.size() - 1).to().orElseThrow())) {
                int at = whole.get(whole.size() - 1).to().orElseThrow();
                Optional<StateGraph.Move> fresh = all.moves(at).stream().filter(move -> move.to().isPresent()
                        && open.contains(move.shown().arrow()) && whole.stream().noneMatch(m -> m.from() == at)).findFirst();
                Optional<List<StateGraph.Move>> on = fresh.map(List::of)
                        .or(() -> way(at, move -> move.to().filter(all::isEnding).isPresent()));
                if (on.isEmpty()) {
                    return Optional.empty();
                }
                whole.addAll(on.get());
            }
            return Optional.of(whole);
        });
    }

    /** The shortest way from a state whose last move is as wanted. */
    private Optional<List<StateGraph.Move>> way(int from, Predicate<StateGraph.Move> wanted) {
        Map<Integer, StateGraph.Move> by = new HashMap<>();
        Deque<Integer> ahead = new ArrayDeque<>(List.of(from));
        while (!ahead.isEmpty()) {
            int at = ahead.remove();
            for (StateGraph.Move move : all.moves(at)) {
                if (wanted.test(move)) {
                    return Optional.of(traced(from, at, move, by));
                }
                if (move.to().isPresent() && move.to().get() != from && by.putIfAbsent(move.to().get(), move) == null) {
                    ahead.add(move.to().get());
                }
            }
        }
        return Optional.empty();
    }

    private static List<StateGraph.Move> traced(int from, int at, StateGraph.Move last, Map<Integer, StateGraph.Move> by) {
        Deque<StateGraph.Move> way = new ArrayDeque<>(List.of(last));
        for (int state = at; state != from; state = by.get(state).from()) {
            way.push(by.get(state));
        }
        return List.copyOf(way);
    }

    private String text(List<StateGraph.Move> way, Set<String> titles) {
        List<StateGraph.Move> said = way.stream().filter(move -> tree.arrows(stepOf(move)).size() > 1).toList();
        String entries = said.stream().map(move -> tree.step(stepOf(move)).name() + " "
                + ResultWords.leadingTo(tree.step(stepOf(move)), move.shown().arrow().outcome())).collect(Collectors.joining(", "));
        Step end = tree.step(endOf(way));
        String title = title(way, end, titles);
        return "\nexample " + Quotation.of(title) + of(way, end) + " {\n"
                + (entries.isEmpty() ? "" : "    " + entries + "\n") + "    ends at " + end.name() + "\n}\n";
    }

    /** Named after the way not yet tried that it takes last. */
    private String title(List<StateGraph.Move> way, Step end, Set<String> titles) {
        String about = end.name().text();
        for (StateGraph.Move move : way) {
            if (open.contains(move.shown().arrow())) {
                about = tree.step(stepOf(move)).name() + " " + move.shown().arrow().key();
            }
        }
        String title = about;
        for (int i = 2; !titles.add(title); i++) {
            title = about + ", " + i;
        }
        return title;
    }

    /** The fault it is a case of, where its end finds only one and that fault shows no other results on the way. */
    private String of(List<StateGraph.Move> way, Step end) {
        List<Name> finds = end instanceof Step.Conclude conclude ? conclude.finds() : List.of();
        return finds.size() != 1 ? "" : procedure.fault(finds.get(0)).filter(fault -> way.stream().allMatch(move ->
                table.cell(fault, tree.step(stepOf(move))).canShow(move.shown().arrow().key())))
                .map(fault -> " of " + fault.name()).orElse("");
    }

    private int stepOf(StateGraph.Move move) {
        return all.state(move.from()).step();
    }
}

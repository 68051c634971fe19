/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.faults.RepairSteps;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/**
 * Which faults a procedure does not tell apart. Two faults are told apart if a step that the tree can come
 * to is sure to show different results for them, or if each gets to conclusions of its own and
 * never to one of the other's, as where one repair after another is tried.
 */
public final class Ambiguity {
    /** Groups listed at most: a table that is nearly empty has more than anybody reads. */
    private static final int MOST_GROUPS = 200;

    /**
     * Faults of which no two are told apart.
     *
     * @param faults       two or more
     * @param acknowledged whether one conclusion finds all of them
     */
    public record Group(List<Fault> faults, boolean acknowledged) {
    }

    private final FaultTable table;
    /** Absent where there are no steps to walk yet. */
    private final Optional<FaultWalks> walks;
    private final Predicate<Step> judgesRepair;
    private final List<Step> used;
    private final List<BitSet> notApart;
    private final List<Group> groups;

    private Ambiguity(FaultTable table, Optional<FaultWalks> walks, Predicate<Step> judgesRepair, List<Step> used) {
        this.table = table;
        this.walks = walks;
        this.judgesRepair = judgesRepair;
        this.used = used;
        this.notApart = IntStream.range(0, table.size()).mapToObj(this::notApart).toList();
        this.groups = findGroups();
    }

    /** What is not told apart in a subject that is a procedure, computed once. */
    public static Optional<Ambiguity> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(Ambiguity.class, s -> inTree(FaultWalks.in(s).orElseThrow())));
    }

    private static Ambiguity inTree(FaultWalks walks) {
        BitSet reached = walks.tree().used();
        return new Ambiguity(walks.table(), Optional.of(walks), walks::judgesRepair, walks.table().steps().stream()
                .filter(step -> walks.tree().number(step.name().text()).stream().anyMatch(reached::get)).toList());
    }

    /** What no step of a table tells apart, whichever of them are asked: for faults whose steps are still to be put in an order. */
    public static Ambiguity of(FaultTable table, Scope scope) {
        Predicate<Step> judges = step -> RepairSteps.verifies(step, scope);
        return new Ambiguity(table, Optional.empty(), judges, table.steps().stream().filter(judges.negate()).toList());
    }

    private BitSet notApart(int fault) {
        BitSet found = new BitSet();
        Fault one = table.faults().get(fault);
        for (int i = 0; i < table.size(); i++) {
            Fault other = table.faults().get(i);
            found.set(i, i != fault && !table.apart(one, other, used) && !partInTheTree(one, other));
        }
        return found;
    }

    private boolean partInTheTree(Fault one, Fault other) {
        return walks.isPresent() && partInTheTree(walks.get(), one, other);
    }

    private static boolean partInTheTree(FaultWalks walks, Fault one, Fault other) {
        Set<Step> ofOne = ends(walks, one);
        Set<Step> ofOther = ends(walks, other);
        return walks.of(one).reachesFinding() && walks.of(other).reachesFinding()
                && ofOne.stream().noneMatch(ofOther::contains);
    }

    private static Set<Step> ends(FaultWalks walks, Fault fault) {
        return walks.of(fault).endings().stream().filter(end -> !end.conclusion().finds().isEmpty())
                .map(FaultWalk.Ending::conclusion).collect(Collectors.toSet());
    }

    /** Maximal sets of faults of which no two are told apart (Bron and Kerbosch 1973, with a pivot). */
    private List<Group> findGroups() {
        List<BitSet> found = new ArrayList<>();
        BitSet all = new BitSet();
        all.set(0, table.size());
        grow(new BitSet(), all, new BitSet(), found);
        return found.stream().map(this::group).toList();
    }

    private void grow(BitSet group, BitSet candidates, BitSet done, List<BitSet> found) {
        if (candidates.isEmpty() && done.isEmpty() && group.cardinality() > 1) {
            found.add((BitSet) group.clone());
        }
        if (candidates.isEmpty() || found.size() >= MOST_GROUPS) {
            return;
        }
        BitSet open = (BitSet) candidates.clone();
        open.andNot(notApart.get(pivot(candidates, done)));
        for (int fault = open.nextSetBit(0); fault >= 0; fault = open.nextSetBit(fault + 1)) {
            BitSet next = (BitSet) candidates.clone();
            next.and(notApart.get(fault));
            BitSet nextDone = (BitSet) done.clone();
            nextDone.and(notApart.get(fault));
            group.set(fault);
            grow(group, next, nextDone, found);
            group.clear(fault);
            candidates.clear(fault);
            done.set(fault);
        }
    }

    private int pivot(BitSet candidates, BitSet done) {
        BitSet either = (BitSet) candidates.clone();
        either.or(done);
        int best = either.nextSetBit(0);
        int most = -1;
        for (int fault = best; fault >= 0; fault = either.nextSetBit(fault + 1)) {
            BitSet shared = (BitSet) candidates.clone();
            shared.and(notApart.get(fault));
            if (shared.cardinality() > most) {
                most = shared.cardinality();
                best = fault;
            }
        }
        return best;
    }

    private Group group(BitSet members) {
        List<Fault> faults = members.stream().mapToObj(table.faults()::get).toList();
        return new Group(faults, walks.filter(known -> foundTogether(known.tree(), faults)).isPresent());
    }

    private static boolean foundTogether(LinkedSteps tree, List<Fault> faults) {
        BitSet finding = new BitSet();
        finding.set(0, tree.size());
        faults.forEach(fault -> finding.and(tree.finding(fault.name().text())));
        return !finding.isEmpty();
    }

    /** In the order of the table; each of two or more faults. A fault may be in several where results overlap. */
    public List<Group> groups() {
        return groups;
    }

    /** How many faults remain possible when this is the fault, itself counted. */
    public int groupSize(Fault fault) {
        return 1 + notApart.get(table.faults().indexOf(fault)).cardinality();
    }

    /** The steps of the table that the tree can come to. */
    public List<Step> used() {
        return used;
    }

    /** Steps declared and never come to that are sure to tell two of the group apart. */
    public List<Step> unusedThatSeparate(Group group) {
        return table.steps().stream().filter(step -> !used.contains(step))
                .filter(step -> pairs(group).anyMatch(pair -> table.cell(pair.get(0), step)
                        .excludes(table.cell(pair.get(1), step)))).toList();
    }

    /** Steps come to of which the table says what some of the group show, but not what all of them do. */
    public List<Step> silentForSome(Group group) {
        return used.stream().filter(step -> !judgesRepair.test(step) && step.outcomes().size() > 1)
                .filter(step -> group.faults().stream().anyMatch(fault -> table.cell(fault, step).isSilent())
                        && group.faults().stream().anyMatch(fault -> !table.cell(fault, step).isSilent())).toList();
    }

    private static Stream<List<Fault>> pairs(Group group) {
        return group.faults().stream().flatMap(one -> group.faults().stream().filter(other -> other != one)
                .map(other -> List.of(one, other)));
    }
}

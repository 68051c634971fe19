/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Procedure;
import org.faultwright.quantity.Exact;

/**
 * Whether the steps of a procedure could be asked in a better order: with the least expected time to a
 * conclusion, over the weights of the faults. What confirms the complaint stays first; repairs and what
 * follows them stay as they are; each way out keeps the test that leads to it. A test that needs something
 * opened, switched on or otherwise exposed waits as long as another that helps needs less of it,
 * whatever that costs; and where two orders take nearly the same time, covers stay on longer.
 */
public final class OrderStudy {
    private static final int MOST_TRIALS = 6;

    /**
     * The best order found against the author's own.
     *
     * @param before     the author's expected time to a conclusion in all, in seconds
     * @param after      that of the better order
     * @param bound      no order has less than this
     * @param isBest     whether no order that is allowed has less than {@code after}
     * @param authors    the author's order of this part, and
     * @param better     the better one
     * @param presumed   results that the table leaves open and the study takes for granted, such as {@code KeyLook upright}
     * @param reason     one sentence on why it is better
     * @param reasons    one sentence for each test in the better order
     */
    public record Comparison(Exact before, Exact after, Exact bound, boolean isBest, OrderedTests authors,
            OrderedTests better, List<String> presumed, String reason, List<String> reasons) {
        /** In seconds. */
        public Exact saving() {
            return before.minus(after);
        }

        /** The same with the time that the changed text takes: what the table leaves open may show either way there. */
        Comparison taking(Exact time) {
            return new Comparison(before, time, bound.min(time), isBest && time.equals(after), authors, better, presumed, reason, reasons);
        }
    }

    private final Procedure procedure;
    private final FaultWalks walks;
    private final LinkedSteps tree;
    private final PartStudy study;
    private final Optional<Proposal> best;
    private final Set<String> reasons = new LinkedHashSet<>();
    private List<String> inTheWay = List.of();
    private boolean askedRules;

    /**
     * An order that has been tried in the text, and the change that puts it there.
     *
     * @param dropped   the steps that nothing leads to any more, which are taken out
     * @param otherEnds outcomes that no single fault shows together, and after which another of several faults is found first, in words
     */
    public record Verified(Comparison comparison, Fix fix, List<String> dropped, List<String> otherEnds) {
    }

    /** What a change of the text is made from. */
    record Proposal(AskingPart part, PartSetUps setUps, TestTree better, Comparison comparison) {
    }

    private OrderStudy(Subject subject) {
        this.procedure = subject.procedure().orElseThrow();
        this.walks = FaultWalks.in(subject).orElseThrow();
        this.tree = walks.tree();
        Optional<Exact> whole = TimeStudy.in(subject).orElseThrow().inAll().expected();
        this.study = new PartStudy(walks, subject.scope(), whole.orElse(Exact.ZERO));
        if (!procedure.problems().isEmpty()) {
            reasons.add("it has words that cannot be read, the first in line " + procedure.problems().get(0).at().line());
            this.best = Optional.empty();
        } else if (walks.table().size() < 2 || whole.isEmpty() || tree.begin().isEmpty()
                || !walks.all().stream().allMatch(FaultWalk::isComplete)) {
            reasons.add(walks.table().size() < 2 ? "there are fewer than two faults" : "its paths have no end");
            this.best = Optional.empty();
        } else {
            this.best = best(Set.of());
            if (best.isEmpty() && reasons.isEmpty()) {
                reasons.add("no part of its steps can stand in another order that is allowed");
            }
        }
    }

    private Optional<Proposal> best(Set<Integer> asWritten) {
        Optional<Proposal> best = Optional.empty();
        for (int root : roots()) {
            try {
                Optional<Proposal> found = study.of(root, asWritten);
                if (found.isPresent() && (best.isEmpty()
                        || found.get().comparison().saving().compareTo(best.get().comparison().saving()) > 0)) {
                    best = found;
                }
            } catch (AskingPart.NotStudied notStudied) {
                reasons.add(notStudied.getMessage());
            }
        }
        return best;
    }

    /** The study of a subject that is a procedure, computed once. */
    public static Optional<OrderStudy> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(OrderStudy.class, OrderStudy::new));
    }

    /** The best order found, also where the author's own is as good; absent where none could be studied. */
    public Optional<Comparison> best() {
        return best.map(Proposal::comparison);
    }

    /**
     * The best order that can be written into the text without anything new being found, with the changes that do so. One
     * that means something else is refused before anything is checked; one that brings findings is tried again with the step in
     * question kept in the set-up that the author asks it in.
     *
     * @param check the findings of a procedure, with which an order is judged
     */
    public Optional<Verified> verified(Function<Procedure, List<Finding>> check) {
        List<Finding> before = List.of();
        Set<Integer> asWritten = new HashSet<>();
        for (int i = 0; i <= MOST_TRIALS; i++) {
            Optional<Proposal> found = i == 0 ? best : best(asWritten);
            if (found.filter(proposal -> proposal.comparison().saving().signum() > 0).isEmpty()) {
                return Optional.empty();
            }
            Rerouting rerouting = new Rerouting(procedure, this, found.get());
            if (!rerouting.works()) {
                inTheWay = rerouting.obstacles();
                return Optional.empty();
            }
            ReroutedText text = new ReroutedText(procedure, rerouting);
            Optional<Verified> meant = meansTheSame(text.changed(), found.get(), text);
            if (meant.isEmpty()) {
                return meant;
            }
            // every rule over two texts costs far more than all of the above
            askedRules = true;
            before = i == 0 ? check.apply(procedure) : before;
            List<Finding> worse = worse(before, check.apply(text.changed()));
            if (worse.isEmpty()) {
                return meant;
            }
            inTheWay = worse.stream().map(finding -> finding.rule() + ": " + finding.message()).distinct().toList();
            Set<Integer> blamed = new HashSet<>();
            worse.forEach(finding -> blamed.addAll(rerouting.blamed(finding.path())));
            if (!asWritten.addAll(blamed)) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    /**
     * Every sequence of outcomes is walked: what a fault shows leads to the same conclusion as before, what no fault explains to none that the
     * author does not come to, and no fault is concluded without the test on which the author rests it.
     */
    private Optional<Verified> meansTheSame(Procedure changed, Proposal proposal, ReroutedText text) {
        Optional<List<OrderDifferences.Difference>> differences = OrderDifferences.between(walks, procedure, changed, text.copies());
        if (differences.isEmpty()) {
            inTheWay = List.of("There are too many sequences of outcomes to walk them all.");
            return Optional.empty();
        }
        inTheWay = differences.get().stream().filter(OrderDifferences.Difference::changesWhatIsMeant).map(OrderDifferences.Difference::toString).toList();
        Comparison taken = proposal.comparison().taking(TimeStudy.of(changed).inAll().expected().orElse(proposal.comparison().before()));
        if (inTheWay.isEmpty() && taken.saving().signum() <= 0) {
            inTheWay = List.of("It saves nothing where a fault shows otherwise what the table does not say of it: " + String.join(", ", taken.presumed()) + ".");
        }
        return inTheWay.isEmpty() ? Optional.of(new Verified(taken, new Fix("Ask in the better order"
                + (text.dropped().isEmpty() ? "" : ", without " + String.join(", ", text.dropped())), text.edits()), text.dropped(),
                differences.get().stream().map(OrderDifferences.Difference::toString).toList())) : Optional.empty();
    }

    /** Why no better order was written: the findings it would bring, or the outcomes after which it means something else. */
    public List<String> inTheWay() {
        return inTheWay;
    }

    /** What rules find more of now, of any weight. Their places have moved, so that they are counted. */
    private static List<Finding> worse(List<Finding> before, List<Finding> after) {
        Map<String, Long> allowed = counted(before);
        Map<String, Long> now = counted(after);
        Set<String> known = before.stream().map(Finding::message).collect(Collectors.toSet());
        return after.stream().filter(finding -> now.get(finding.rule()) > allowed.getOrDefault(finding.rule(), 0L)
                && !known.contains(finding.message())).toList();
    }

    private static Map<String, Long> counted(List<Finding> findings) {
        return findings.stream().collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
    }

    /** Whether anything but steps, faults and what they name was looked at. */
    public boolean hasAskedRules() {
        return askedRules;
    }

    /** Why parts were not studied, each as the end of a sentence that begins "The order was not studied because". */
    public List<String> notStudied() {
        return List.copyOf(reasons);
    }

    FaultWalks walks() {
        return walks;
    }

    /** Where the asking begins: behind the steps that confirm the complaint, or at the beginning. */
    private List<Integer> roots() {
        int begin = tree.begin().orElseThrow();
        Set<Integer> roots = new LinkedHashSet<>();
        tree.reachable(begin).stream().filter(step -> tree.step(step).frame().confirms().isPresent())
                .forEach(step -> tree.arrows(step).stream().map(LinkedSteps.Arrow::to).filter(to -> to != LinkedSteps.NOWHERE
                        && !tree.isConclusion(to)).forEach(roots::add));
        return roots.isEmpty() ? List.of(begin) : List.copyOf(roots);
    }
}

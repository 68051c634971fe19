/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;

/** The outcomes of a step, each with a box to tick and where it leads: in a row where they are short, else below one another. */
final class PaperOutcomes {
    /** Boxes to tally a bounded repeat in; a larger bound is counted on the job slip. */
    private static final int MOST_BOXES = 9;
    private static final int SHORT = 26;

    /** To where the reader came from: no arrow to a step. */
    private static final String BACK = "\u21A9";

    private final CardPlan plan;

    PaperOutcomes(CardPlan plan) {
        this.plan = plan;
    }

    /** @param visits how often somebody may come by: so many boxes has each outcome */
    void add(Fo into, PlacedStep step, Optional<LimitZones> zones, boolean scale, int visits) {
        List<Outcome> outcomes = step.step().outcomes();
        if (outcomes.isEmpty()) {
            return;
        }
        List<CardResult> results = outcomes.stream().map(outcome -> result(step.step(), outcome, zones, scale)).toList();
        boolean row = results.stream().allMatch(result -> result.word().length() + result.detail().length() <= SHORT)
                && outcomes.stream().allMatch(outcome -> outcome.proves().isEmpty() && outcome.repeat().isEmpty());
        if (row) {
            Fo line = into.add("block", "role", "P", "line-height", "13.5pt", "space-before", "0.4mm");
            for (int i = 0; i < outcomes.size(); i++) {
                Fo one = line.verbatim(i == 0 ? "" : " ").add("inline", "padding-right", i + 1 < outcomes.size() ? "3mm" : "0mm");
                seen(one, results.get(i), true, visits);
                one.verbatim("\u00A0");
                way(one, step, outcomes.get(i).target(), outcomes.get(i));
            }
            return;
        }
        for (int i = 0; i < outcomes.size(); i++) {
            Fo line = into.add("block", "role", "P", "line-height", "13pt", "start-indent", "inherited-property-value(start-indent) + 5mm", "text-indent", "-5mm",
                    "text-align-last", "justify", "end-indent", Paint.FOR_PAGE, "space-before", "0.3mm");
            seen(line, results.get(i), false, visits);
            Outcome outcome = outcomes.get(i);
            if (!outcome.proves().isEmpty()) {
                line.verbatim(" ").text("(proves " + Wording.settings(outcome.proves(), plan.scope()) + ")");
            }
            line.verbatim(" ").add("leader", "leader-pattern", "dots", "leader-length.minimum", "3mm", "leader-length.optimum", "5mm", "leader-length.maximum", "100%", "color", Paint.LINE);
            line.verbatim(" ");
            way(line, step, outcome.target(), outcome);
            outcome.repeat().ifPresent(repeat -> repeat(into, step, outcome, repeat, visits));
        }
    }

    /** The outcome of a step that has but one and asks nothing. */
    static Optional<Outcome> only(Step step) {
        List<Outcome> outcomes = step.outcomes();
        boolean asks = step.answer() == Step.Answer.SEEN;
        return outcomes.size() == 1 && !asks && outcomes.get(0).proves().isEmpty() && outcomes.get(0).repeat().isEmpty()
                ? Optional.of(outcomes.get(0)) : Optional.empty();
    }

    /** @param row whether it stands in one with others: there a line ends between two of them, never inside one */
    private static void seen(Fo line, CardResult result, boolean row, int visits) {
        line.add("inline", "font-size", "12pt").verbatim(Wording.BOX.repeat(visits));
        line.verbatim("\u00A0");
        Optional<String> pattern = TimePattern.of(result.word());
        line.add("inline", "font-weight", "bold").whole(result.word());
        pattern.ifPresent(signals -> line.verbatim("\u00A0").add("inline", "font-size", "7pt", "role", "artifact").verbatim(signals));
        if (!result.detail().isEmpty()) {
            boolean together = row || result.detail().indexOf(' ') < 0;
            line.verbatim(together ? "\u00A0" : " ");
            if (row) {
                line.whole(result.detail());
            } else {
                line.text(result.detail());
            }
        }
    }

    /** Where the limit or its scale already tells the readings of each outcome, they are not said again. */
    private CardResult result(Step step, Outcome outcome, Optional<LimitZones> zones, boolean scale) {
        CardResult result = CardResult.of(step, outcome, plan.scope(), zones);
        boolean known = scale || CardResult.expected(step).isPresent() && !outcome.key().equals(Step.DOUBTFUL);
        boolean told = known && !(outcome.head() instanceof Outcome.Band);
        return told ? CardResult.brief(step, outcome, plan.scope(), zones) : result;
    }

    private void repeat(Fo into, PlacedStep step, Outcome outcome, Outcome.Repeat repeat, int visits) {
        Fo line = into.add("block", "role", "P", "text-align", "end", "end-indent", Paint.FOR_PAGE, "line-height", "13pt");
        String boxes = Wording.BOX.repeat(Math.max(0, Math.min(repeat.atMost(), MOST_BOXES)));
        for (int visit = 1; visit <= visits; visit++) {
            line.verbatim(visit == 1 ? "" : "\u2002").add("inline", "font-size", "12pt").verbatim(boxes);
        }
        line.text(" " + Wording.atMost(repeat) + ", then ");
        way(line, step, Optional.of(repeat.otherwise()), outcome);
    }

    void way(Fo into, PlacedStep step, Optional<Name> name, Outcome outcome) {
        if (name.isEmpty()) {
            into.text(Wording.ARROW + " not stated");
            return;
        }
        goal(into, step.run().target(name.get()));
    }

    private static void goal(Fo into, StepRun.Target target) {
        if (target instanceof StepRun.To to) {
            Paint.arrow(into, to.step());
            to.left().forEach(left -> bound(into, left));
        } else if (target instanceof StepRun.Back back) {
            into.add("inline", "font-weight", "bold").whole(BACK + "\u00A0back with: " + PlainText.phrase(back.exit()));
            back.left().forEach(left -> bound(into, left));
        } else if (target instanceof StepRun.Nowhere nowhere) {
            into.text(Wording.ARROW + " " + nowhere.name() + " (not found)");
        }
    }

    /** How often a step may be left so whose routine stands in place: its outcomes are not printed, so this is told where it ends. */
    private static void bound(Fo into, StepRun.Left left) {
        left.by().repeat().ifPresent(repeat -> {
            into.text(" (" + Wording.atMost(repeat) + ", then ");
            goal(into, left.step().run().target(repeat.otherwise()));
            into.verbatim(")");
        });
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;

/**
 * The whole tree in one column: the likeliest path straight down, what parts from it set in, each with the outcome that leads
 * there. A step that several lead to hangs where it is met first; the others give its number.
 */
final class PaperChart {
    private static final String END = "\u25A0";
    /** Letters of a title that are always told. */
    private static final int SHORTEST = 12;
    private static final int DEEPEST = 12;
    /** DejaVu's lines meet one another at this distance, as a multiple of their size. */
    private static final double DISTANCE = 1.164;
    private static final double SIZE = 9;
    private static final double SIZE_ALONE = 10;
    /** How wide a letter is on average, in millimetres at the smaller size. */
    private static final double LETTER = 1.69;

    /** @param by the outcomes that lead there */
    private record Branch(PlacedStep step, List<String> by) {
    }

    private final double width;
    private final Map<PlacedStep, List<Branch>> branches = new IdentityHashMap<>();
    /** An outcome that leads to a step drawn elsewhere. */
    private record Jump(String word, PlacedStep to) {
    }

    private final Map<PlacedStep, List<Jump>> elsewhere = new IdentityHashMap<>();
    /** The conclusions that a step leads to first; where the chart is small they stand in its row. */
    private final Map<PlacedStep, List<Branch>> endings = new IdentityHashMap<>();
    private final boolean alone;
    private final double size;

    /**
     * @param width of the column, in millimetres
     * @param alone whether the chart is all there is: then its rows are where its arrows lead, and one that leaves its page names the other
     */
    PaperChart(double width, boolean alone) {
        this.width = width;
        this.alone = alone;
        this.size = alone ? SIZE_ALONE : SIZE;
    }

    void add(Fo into, CardPlan plan, CardSection own) {
        own.steps().forEach(step -> grow(plan, step));
        Set<PlacedStep> drawn = new HashSet<>();
        endings.values().forEach(ends -> ends.forEach(end -> drawn.add(end.step())));
        own.steps().forEach(step -> {
            if (!drawn.contains(step)) {
                trunk(into, step, "", drawn, 0);
            }
        });
    }

    private final Set<PlacedStep> hung = new HashSet<>();

    private void grow(CardPlan plan, PlacedStep step) {
        hung.add(step);
        List<Branch> own = new ArrayList<>();
        List<Jump> others = new ArrayList<>();
        for (Outcome outcome : outcomes(plan, step)) {
            Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream())
                    .forEach(name -> target(step, name).ifPresent(to -> {
                        String word = PlainText.phrase(outcome.key());
                        Optional<Branch> known = own.stream().filter(branch -> branch.step() == to).findFirst();
                        if (known.isPresent()) {
                            known.get().by().add(word);
                        } else if (hung.add(to)) {
                            own.add(new Branch(to, new ArrayList<>(List.of(word))));
                        } else {
                            others.add(new Jump(word, to));
                        }
                    }));
        }
        if (!alone) {
            List<Branch> ends = own.stream().filter(branch -> branch.step().step() instanceof Step.Conclude).toList();
            own.removeAll(ends);
            endings.put(step, ends);
        }
        own.sort((a, b) -> Integer.compare(number(a.step()), number(b.step())));
        branches.put(step, own);
        elsewhere.put(step, others);
    }

    private static List<Outcome> outcomes(CardPlan plan, PlacedStep step) {
        return step.step().outcomes();
    }

    private static Optional<PlacedStep> target(PlacedStep from, Name name) {
        return from.run().target(name) instanceof StepRun.To to ? Optional.of(to.step()) : Optional.empty();
    }

    private static int number(PlacedStep step) {
        return Integer.parseInt(step.label().replaceAll("[^0-9]", ""));
    }

    /** One step below the other along the likeliest path; what parts from it stands between. */
    private void trunk(Fo into, PlacedStep first, String lines, Set<PlacedStep> drawn, int depth) {
        PlacedStep step = first;
        String begin = "";
        while (step != null && drawn.add(step)) {
            row(into, lines + begin, step);
            List<Branch> own = branches.getOrDefault(step, List.of());
            for (int i = 1; i < own.size(); i++) {
                Branch branch = own.get(i);
                String fork = "\u251C\u2500" + String.join(", ", branch.by()) + Wording.ARROW;
                if (depth < DEEPEST) {
                    side(into, branch, lines, fork, drawn, depth);
                }
            }
            begin = own.isEmpty() || isPlain(own.get(0)) ? "" : said(own.get(0));
            step = own.isEmpty() ? null : own.get(0).step();
        }
    }

    private void side(Fo into, Branch branch, String lines, String fork, Set<PlacedStep> drawn, int depth) {
        PlacedStep step = branch.step();
        if (!drawn.add(step)) {
            return;
        }
        row(into, lines + fork, step);
        drawn.remove(step);
        below(into, step, lines + "\u2502  ", drawn, depth + 1);
    }

    /** What follows a step that has been drawn on its fork. */
    private void below(Fo into, PlacedStep step, String lines, Set<PlacedStep> drawn, int depth) {
        drawn.add(step);
        List<Branch> own = branches.getOrDefault(step, List.of());
        for (int i = own.size() - 1; i > 0 && depth < DEEPEST; i--) {
            side(into, own.get(i), lines, "\u251C\u2500" + String.join(", ", own.get(i).by()) + Wording.ARROW, drawn, depth);
        }
        if (!own.isEmpty()) {
            PlacedStep next = own.get(0).step();
            if (!drawn.contains(next)) {
                row(into, lines + (isPlain(own.get(0)) ? "" : said(own.get(0))), next);
                below(into, next, lines, drawn, depth);
            }
        }
    }

    private static String said(Branch branch) {
        return isPlain(branch) ? Wording.ARROW : String.join(", ", branch.by()) + Wording.ARROW;
    }

    private static boolean isPlain(Branch branch) {
        return branch.by().equals(List.of("then")) || branch.by().equals(List.of("done"));
    }

    private void row(Fo into, String before, PlacedStep step) {
        Fo line = into.add("block", "role", "P", "font-size", size + "pt", "line-height", String.format(Locale.ROOT, "%.2fpt", size * DISTANCE), "wrap-option", "no-wrap",
                "line-stacking-strategy", "font-height");
        int tail = 0;
        while (tail < before.length() && "\u2502\u251C\u2500 ".indexOf(before.charAt(tail)) >= 0) {
            tail++;
        }
        if (tail > 0) {
            line.add("inline", "role", "artifact", "color", Paint.LINE).verbatim(before.substring(0, tail).replace(' ', '\u00A0'));
        }
        line.add("inline", "font-style", "normal").text(before.substring(tail));
        boolean end = step.step() instanceof Step.Conclude;
        line.add("basic-link", "internal-destination", step.anchor(), "font-weight", "bold").spoken("To step " + step.label())
                .verbatim((end ? END : "") + step.label());
        line.verbatim("\u00A0");
        if (alone) {
            line.set("id", step.anchor());
        }
        List<Jump> jumps = elsewhere.getOrDefault(step, List.of());
        String others = jumps.isEmpty() ? "" : " (" + jumps.stream().map(jump -> jump.word() + Wording.ARROW + jump.to().label() + (alone ? " p. 1" : ""))
                .collect(Collectors.joining(", ")) + ")";
        List<Branch> ends = endings.getOrDefault(step, List.of());
        int room = (int) (width / LETTER / size * SIZE) - before.length() - step.label().length() - 2
                - ends.stream().mapToInt(branch -> said(branch).length() + branch.step().label().length() + 2).sum();
        String title = Wording.title(step.step());
        boolean jumping = !others.isEmpty() && (alone || others.length() < room - SHORTEST);
        int fits = Math.max(SHORTEST, jumping ? room - others.length() : room);
        line.text(title.length() <= fits ? title : title.substring(0, fits - 1).strip() + "\u2026");
        for (Branch branch : ends) {
            line.verbatim(" ").text(said(branch));
            line.add("basic-link", "internal-destination", branch.step().anchor(), "font-weight", "bold").spoken("To step " + branch.step().label())
                    .verbatim(END + branch.step().label());
        }
        if (alone) {
            for (Jump jump : jumps) {
                line.verbatim(Paint.WIDE_GAP).text(jump.word());
                Paint.arrow(line, jump.to());
            }
        } else if (jumping) {
            line.text(others);
        }
    }
}

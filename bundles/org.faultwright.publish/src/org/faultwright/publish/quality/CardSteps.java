/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;

/** Steps as whoever holds the card knows them: by the number and the title that are printed there, never by their name in the text. */
final class CardSteps {
    private static final Pattern QUOTED = Pattern.compile("\"([^\"]+)\"");
    private static final int LONGEST_TITLE = 72;

    private final CardPlan plan;

    CardSteps(CardPlan plan) {
        this.plan = plan;
    }

    CardPlan plan() {
        return plan;
    }

    /** Such as {@code 25 "Did the lamp flash?"}. */
    String named(Step step) {
        return named(number(step), step);
    }

    private static String named(String number, Step step) {
        String title = PlainText.line(Wording.title(step));
        return (number.isEmpty() ? "" : number + " ") + "\u201C" + (title.length() <= LONGEST_TITLE ? title : title.substring(0, title.lastIndexOf(' ', LONGEST_TITLE) < 1 ? LONGEST_TITLE
                : title.lastIndexOf(' ', LONGEST_TITLE)) + "\u2026") + "\u201D";
    }

    List<String> named(List<? extends Step> steps) {
        return steps.stream().map(this::named).toList();
    }

    static List<String> examples(List<Example> examples) {
        return examples.stream().map(example -> PlainText.line(example.called())).toList();
    }

    /** Every number that it has, such as {@code 7b, 12b}; empty for a step that the card does not print. */
    String number(Step step) {
        return String.join(", ", plan.labels(step).isEmpty() ? Stream.of(plan.label(step)).filter(label -> !label.isEmpty()).toList() : plan.labels(step));
    }

    /** Results by their steps, such as {@code 25 "Did the lamp flash?": dark, lit}. */
    List<String> results(List<ExampleCoverage.StepOutcome> ways) {
        Map<Step, Set<String>> bySteps = new LinkedHashMap<>();
        ways.forEach(way -> bySteps.computeIfAbsent(way.step(), first -> new LinkedHashSet<>()).add(PlainText.phrase(way.outcome())));
        return bySteps.entrySet().stream().map(entry -> named(entry.getKey()) + ": " + String.join(", ", entry.getValue())).toList();
    }

    /** The numbers alone, in the order of the card. */
    String numbers(Collection<? extends Step> steps) {
        List<String> printed = plan.placed().filter(placed -> steps.contains(placed.step())).map(PlacedStep::label).toList();
        return String.join(", ", printed);
    }

    /** Where a step stands that a path comes to; of a routine that is printed apart, its place there. */
    String number(InlinedStep place) {
        return find(chain(place).stream().map(step -> (Predicate<Step>) other -> other == step).toList()).map(PlacedStep::label).orElseGet(() -> plan.label(place.step()));
    }

    private static List<Step> chain(InlinedStep place) {
        return Stream.concat(place.caller().stream().flatMap(outer -> chain(outer).stream()), Stream.of(place.step())).toList();
    }

    /** From a step of the procedure inwards, through the routines that are performed. */
    private Optional<PlacedStep> find(List<Predicate<Step>> inwards) {
        Optional<PlacedStep> box = Optional.empty();
        Optional<PlacedStep> at = Optional.empty();
        for (int i = 0; i < inwards.size(); i++) {
            Predicate<Step> wanted = inwards.get(i);
            List<PlacedStep> inside = box.map(plan::inside).orElse(List.of());
            Optional<PlacedStep> here = inside.stream().filter(one -> wanted.test(one.step())).findFirst();
            if (here.isPresent()) {
                at = here;
                continue;
            }
            List<PlacedStep> own = i == 0 ? plan.sections().get(0).steps() : at.flatMap(plan::section).map(section -> section.steps()).orElse(List.of());
            Optional<PlacedStep> found = own.stream().filter(one -> wanted.test(one.step())).findFirst();
            if (found.isPresent()) {
                box = found;
                at = found;
            } else if (inside.isEmpty()) {
                return Optional.empty();
            }
            // else a step whose routine goes on with the letters of the box: it has no place of its own
        }
        return at;
    }

    /** Such as {@code 25 dark, 26, 27}: the numbers of a path, each with the result taken where there is more than one. */
    String path(List<PathStep> path) {
        return path.stream().map(this::step).collect(Collectors.joining(", "));
    }

    private String step(PathStep one) {
        Optional<PlacedStep> placed = find(Arrays.stream(one.step().split("/")).map(name -> (Predicate<Step>) step -> step.name().text().equals(name)).toList());
        boolean tells = !one.outcome().isEmpty() && placed.map(PlacedStep::step).filter(step -> step.outcomes().size() > 1).isPresent();
        return placed.map(PlacedStep::label).orElse(one.step()) + (tells ? " " + PlainText.phrase(one.outcome()) : "");
    }

    /** A sentence about the text in which its steps are called as on the card. */
    String inSentence(String sentence) {
        Matcher quoted = QUOTED.matcher(sentence);
        StringBuilder said = new StringBuilder();
        while (quoted.find()) {
            quoted.appendReplacement(said, Matcher.quoteReplacement(called(quoted.group(1)).orElse(quoted.group())));
        }
        return quoted.appendTail(said).toString();
    }

    /** A name that something besides a step has may mean that; of a step and the routine that it follows, the step is meant. */
    private boolean isSomethingElse(Step step) {
        Name name = step.name();
        boolean namesake = step instanceof Step.Perform perform && perform.namesake().isPresent();
        return Stream.of(plan.scope().condition(name), plan.scope().instrument(name), plan.scope().point(name), plan.scope().part(name),
                plan.scope().indicator(name), plan.scope().note(name), plan.scope().routine(name).filter(routine -> !namesake), plan.procedure().fault(name)).anyMatch(Optional::isPresent);
    }

    private Optional<String> called(String name) {
        String[] path = name.split("/");
        String last = path[path.length - 1];
        List<Step> all = plan.steps().filter(step -> step.name().text().equals(last)).toList();
        List<Step> own = plan.procedure().steps().stream().filter(step -> path.length == 1 && step.name().text().equals(last)).toList();
        List<Step> meant = own.isEmpty() ? all : own;
        // what a fault is called concludes it
        Optional<Fault> fault = plan.procedure().faults().stream().filter(one -> path.length == 1 && one.name().text().equals(last) && !one.title().isBlank()).findFirst();
        if (fault.isPresent()) {
            return fault.map(one -> "\u201C" + PlainText.line(one.title()) + "\u201D");
        }
        return meant.size() == 1 && !isSomethingElse(meant.get(0)) ? Optional.of("step " + named(meant.get(0))) : Optional.empty();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.quantity.Interval;

/**
 * The steps that a draft is made of: those declared, with the results they lack filled in, and those that
 * the fault table names and nobody has written yet.
 */
public final class DraftSteps {
    private final Procedure procedure;
    private final Scope scope;
    private final Map<String, Step> byName = new LinkedHashMap<>();
    private final Set<String> created = new LinkedHashSet<>();
    private final Map<Object, Step> made = new LinkedHashMap<>();

    public DraftSteps(Procedure procedure) {
        this.procedure = procedure;
        this.scope = procedure.scope();
        procedure.namedSteps().forEach(step -> byName.putIfAbsent(step.name().text(), completed(step)));
        procedure.faults().forEach(fault -> fault.shows().forEach(showing -> {
            if (!byName.containsKey(showing.step().text())) {
                create(new Step.Check(showing.step(), title(showing.step().text()) + "?", StepFrame.PLAIN,
                        shown(showing.step().text(), showing.at()), showing.at()));
            }
        }));
        procedure.faults().forEach(fault -> fault.remedies().stream().filter(name -> !byName.containsKey(name.text()))
                .forEach(name -> create(new Step.Do(name, title(name.text()), Optional.empty(), Optional.empty(), List.of(),
                        StepFrame.PLAIN, outcomes(List.of(Step.DONE), name.at()), name.at()))));
    }

    private Step completed(Step step) {
        return step.outcomes().isEmpty() ? step.renamed(step.name(), outcomes(results(step), step.at())) : step;
    }

    /** The results that a step without any must have: what its kind asks for, and what the table says it shows. */
    private List<String> results(Step step) {
        if (step instanceof Step.Do) {
            return List.of(Step.DONE);
        }
        if (step instanceof Step.Perform perform) {
            return perform.routine().flatMap(scope::routine).map(Routine::exits).orElse(List.of()).stream().map(Name::text)
                    .toList();
        }
        if (step instanceof Step.Measure measure && !measure.rows().isEmpty()) {
            return List.of(Step.ALL_WITHIN, Step.ANY_OUTSIDE);
        }
        if (step instanceof Step.Measure measure && measure.expects().isEmpty() && isSilent(step.name().text())) {
            return List.of(Step.DONE);
        }
        Optional<Interval> limit = (step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.<Step.Expectation>empty())
                .map(expected -> expected.limit().value().interval());
        if (limit.isPresent()) {
            if (says(step.name().text(), Step.OUTSIDE)) {
                return List.of(Step.WITHIN, Step.OUTSIDE);
            }
            List<String> sides = new ArrayList<>(List.of(Step.WITHIN));
            limit.get().lower().ifPresent(end -> sides.add(0, Step.BELOW));
            limit.get().upper().ifPresent(end -> sides.add(Step.ABOVE));
            return sides;
        }
        if (step instanceof Step.Observe observe && observe.indicator().flatMap(scope::indicator).isPresent()) {
            List<String> codes = new ArrayList<>(observe.indicator().flatMap(scope::indicator).map(Indicator::codes)
                    .orElseThrow().stream().map(code -> code.pattern().text()).toList());
            codes.add("none");
            codes.add(ELSE);
            return codes;
        }
        return step.answer() == Step.Answer.SEEN
                ? shown(step.name().text(), step.at()).stream().map(Outcome::key).toList() : List.of();
    }

    private boolean isSilent(String step) {
        return procedure.faults().stream().flatMap(fault -> fault.shows().stream()).noneMatch(showing -> showing.step().text().equals(step));
    }

    /** Whether some fault shows this there. */
    private boolean says(String step, String outcome) {
        return procedure.faults().stream().flatMap(fault -> fault.shows().stream()).filter(showing -> showing.step().text().equals(step))
                .flatMap(showing -> showing.possible().stream()).anyMatch(possible -> possible.words().text().equals(outcome));
    }

    /** The word for whatever other outcomes leave. */
    public static final String ELSE = "anything else";

    private List<Outcome> shown(String step, SourceRange at) {
        Set<String> keys = new LinkedHashSet<>();
        procedure.faults().stream().flatMap(fault -> fault.shows().stream()).filter(s -> s.step().text().equals(step))
                .map(Showing::possible).flatMap(List::stream).forEach(possible -> keys.add(possible.words().text()));
        if (keys.equals(Set.of("yes")) || keys.equals(Set.of("no"))) {
            return outcomes(List.of("yes", "no"), at);
        }
        if (keys.isEmpty()) {
            return outcomes(List.of("yes", "no"), at);
        }
        // what a unit without these faults shows has to have a place as well
        boolean isOpen = procedure.faults().stream().anyMatch(fault -> fault.shows().stream().noneMatch(s -> s.step().text().equals(step)));
        if (keys.size() == 1 || isOpen && !keys.equals(Set.of("yes", "no"))) {
            keys.add("other");
        }
        return outcomes(List.copyOf(keys), at);
    }

    public static List<Outcome> outcomes(List<String> keys, SourceRange at) {
        return keys.stream().map(key -> new Outcome(key.equals(ELSE) ? new Outcome.AnythingElse(at)
                : new Outcome.Word(new Name(key, at)), Optional.empty(), Optional.empty(), List.of(), at)).toList();
    }

    /** Adds a step that is not in the text. */
    public Step create(Step step) {
        byName.put(step.name().text(), step);
        created.add(step.name().text());
        return step;
    }

    /** A step made once for a purpose. */
    public Step made(Object purpose, Supplier<Step> maker) {
        return made.computeIfAbsent(purpose, p -> create(maker.get()));
    }

    public boolean isCreated(String name) {
        return created.contains(name);
    }

    boolean isTaken(String name) {
        return byName.containsKey(name) || procedure.faults().stream().anyMatch(f -> f.name().text().equals(name))
                || scope.routines().stream().anyMatch(r -> r.name().text().equals(name))
                || scope.conditions().stream().anyMatch(c -> c.name().text().equals(name))
                || scope.notes().stream().anyMatch(n -> n.name().text().equals(name));
    }

    /** The name, with a number behind it where it is taken. */
    public String free(String wanted) {
        String name = wanted;
        for (int i = 2; isTaken(name); i++) {
            name = wanted + i;
        }
        return name;
    }

    public Optional<Step> step(String name) {
        return Optional.ofNullable(byName.get(name));
    }

    public List<Step> all() {
        return List.copyOf(byName.values());
    }

    /** The procedure with all of them. */
    public Procedure completed() {
        return procedure.withSteps(all());
    }

    /** A name such as {@code KeyLook} as words: {@code Key look}. */
    public static String title(String name) {
        String words = name.replaceAll("(?<=[\\p{Ll}\\p{N}])(?=\\p{Lu})", " ").replace('_', ' ');
        StringBuilder title = new StringBuilder();
        for (String word : words.split(" ")) {
            boolean shouted = word.length() > 1 && word.equals(word.toUpperCase(Locale.ROOT));
            title.append(title.length() == 0 ? word : " " + (shouted ? word : word.toLowerCase(Locale.ROOT)));
        }
        return title.toString();
    }

    /** A frame that needs and leaves no more than this. */
    public static StepFrame frame(List<Setting> needs, List<Setting> leaves) {
        StepFrame plain = StepFrame.PLAIN;
        return new StepFrame(needs, plain.setUps(), leaves, plain.notes(), plain.handles(), plain.takes(), plain.tools(), plain.hazards(),
                plain.confirms(), plain.verifies(), plain.source(), plain.hint(), plain.waits(), plain.pictures(), plain.precautions());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.Publication;

/** What a card is laid out by: its sections, the number of every step, and who performs which routine. */
public final class Plan {
    private final Publication publication;
    private final Scope scope;
    private final List<Section> sections = new ArrayList<>();
    private final Map<Step, String> labels = new IdentityHashMap<>();
    private final Map<String, Section> routines = new LinkedHashMap<>();
    private final Map<String, List<Step>> callers = new LinkedHashMap<>();

    public Plan(Publication publication) {
        this.publication = publication;
        this.scope = publication.procedure().scope();
        add("", publication.procedure());
        // Routines found on the way are appended, and their own performs looked through in turn.
        for (int i = 0; i < sections.size(); i++) {
            Stream.concat(sections.get(i).steps().stream(), sections.get(i).endings().stream())
                    .filter(Step.Perform.class::isInstance).map(Step.Perform.class::cast).forEach(this::addRoutine);
        }
    }

    private void addRoutine(Step.Perform perform) {
        Optional<Routine> routine = perform.routine().flatMap(scope::routine);
        if (routine.isPresent()) {
            String name = routine.get().name().text();
            callers.computeIfAbsent(name, first -> new ArrayList<>()).add(perform);
            if (!routines.containsKey(name)) {
                routines.put(name, add(Numbering.letter(routines.size()), routine.get()));
            }
        }
    }

    private Section add(String letter, StepGraph graph) {
        List<Step> order = Numbering.readingOrder(graph);
        List<Step> steps = order.stream().filter(step -> !(step instanceof Step.Conclude)).toList();
        List<Step> endings = order.stream().filter(Step.Conclude.class::isInstance).toList();
        Section section = new Section(letter, graph, steps, endings);
        int number = 0;
        for (Step step : (Iterable<Step>) Stream.concat(steps.stream(), endings.stream())::iterator) {
            labels.put(step, letter + ++number);
        }
        sections.add(section);
        return section;
    }

    public Publication publication() {
        return publication;
    }

    public Procedure procedure() {
        return publication.procedure();
    }

    public Scope scope() {
        return scope;
    }

    /** The procedure itself first, then its routines in the order they are met. */
    public List<Section> sections() {
        return sections;
    }

    public Stream<Step> steps() {
        return sections.stream().flatMap(section -> Stream.concat(section.steps().stream(), section.endings().stream()));
    }

    public Optional<Section> routine(Name name) {
        return Optional.ofNullable(routines.get(name.text()));
    }

    /** The steps that perform the section's routine. */
    public List<Step> callers(Section section) {
        return callers.getOrDefault(section.graph().name().text(), List.of());
    }

    /** Such as {@code 7} or {@code A2}. */
    public String label(Step step) {
        return labels.get(step);
    }

    public String anchor(Step step) {
        return "step-" + label(step);
    }

    public static String anchor(Section section) {
        return "routine-" + section.letter();
    }

    /** Where each step stands, by its name: {@code SeeIt}, and in a routine {@code MakeSafe/SwitchOff}. */
    public Map<String, String> places() {
        Map<String, String> places = new TreeMap<>();
        for (Section section : sections) {
            String path = section.isRoutine() ? section.graph().name().text() + "/" : "";
            Stream.concat(section.steps().stream(), section.endings().stream())
                    .forEach(step -> places.putIfAbsent(path + step.name().text(), anchor(step)));
        }
        return places;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;

/** What the printed steps refer to, out of all that a library declares. */
public final class UsedDeclarations {
    private final CardPlan plan;

    public UsedDeclarations(CardPlan plan) {
        this.plan = plan;
    }

    /** Notes with the steps that warn of them, the gravest signal word first. */
    public Map<Note, List<Step>> notes() {
        Map<String, List<Step>> steps = new LinkedHashMap<>();
        plan.steps().forEach(step -> step.frame().notes().forEach(
                note -> steps.computeIfAbsent(note.text(), first -> new ArrayList<>()).add(step)));
        Map<Note, List<Step>> notes = new LinkedHashMap<>();
        plan.scope().notes().stream().filter(note -> steps.containsKey(note.name().text()))
                .sorted((a, b) -> a.word().compareTo(b.word()))
                .forEach(note -> notes.put(note, steps.get(note.name().text())));
        return notes;
    }

    /** In the order they are declared. */
    public List<Condition> conditions() {
        Set<String> names = new LinkedHashSet<>();
        plan.steps().forEach(step -> settings(step).forEach(setting -> names.add(setting.condition().text())));
        // A condition that another one is forced by belongs to it.
        plan.scope().conditions().stream().filter(condition -> names.contains(condition.name().text()))
                .flatMap(condition -> condition.becomes().stream())
                .map(becomes -> becomes.when().condition().text()).toList().forEach(names::add);
        return plan.scope().conditions().stream().filter(condition -> names.contains(condition.name().text())).toList();
    }

    private static Stream<Setting> settings(Step step) {
        return Stream.of(step.frame().needs().stream(), step.frame().sets().stream(),
                step.outcomes().stream().flatMap(outcome -> outcome.proves().stream())).flatMap(all -> all);
    }

    /** Instruments with the measurements taken with each; none with one that is only tried. */
    public Map<Instrument, List<Step.Measure>> instruments() {
        Map<String, List<Step.Measure>> measures = new LinkedHashMap<>();
        plan.steps().filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast)
                .forEach(measure -> measure.instrument().ifPresent(
                        name -> measures.computeIfAbsent(name.text(), first -> new ArrayList<>()).add(measure)));
        plan.steps().flatMap(step -> step.frame().precautions().tries().stream())
                .forEach(name -> measures.computeIfAbsent(name.text(), first -> new ArrayList<>()));
        Map<Instrument, List<Step.Measure>> instruments = new LinkedHashMap<>();
        plan.scope().instruments().stream().filter(one -> measures.containsKey(one.name().text()))
                .forEach(one -> instruments.put(one, measures.get(one.name().text())));
        return instruments;
    }

    public List<Point> points() {
        Set<String> names = new LinkedHashSet<>();
        plan.steps().filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast)
                .flatMap(measure -> ProbePoints.names(measure).stream())
                .map(Name::text).forEach(names::add);
        return plan.scope().points().stream().filter(point -> names.contains(point.name().text())).toList();
    }

    public List<Indicator> indicators() {
        Set<String> names = new LinkedHashSet<>();
        plan.steps().filter(Step.Observe.class::isInstance).map(Step.Observe.class::cast)
                .flatMap(observe -> observe.indicator().stream()).map(Name::text).forEach(names::add);
        return plan.scope().indicators().stream().filter(one -> names.contains(one.name().text())).toList();
    }

    public List<Part> parts() {
        Set<String> names = new LinkedHashSet<>();
        plan.steps().map(Step::frame).map(StepFrame::handles).flatMap(List::stream).map(Name::text).forEach(names::add);
        return plan.scope().parts().stream().filter(part -> names.contains(part.name().text())).toList();
    }

    /** Hand tools: the procedure's list, then what only a step names. */
    public List<String> tools() {
        Set<String> tools = new LinkedHashSet<>();
        plan.procedure().tools().forEach(tool -> tools.add(tool.value()));
        plan.steps().forEach(step -> step.frame().tools().forEach(tool -> tools.add(tool.value())));
        return List.copyOf(tools);
    }
}

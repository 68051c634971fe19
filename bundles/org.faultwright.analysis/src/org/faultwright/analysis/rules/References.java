/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.StepGraph;

/** Every name in a document that refers to something, with what it may refer to. */
public final class References {
    private final Subject subject;
    private final Scope scope;
    private final Map<String, Name> faults;
    private final List<Reference> found = new ArrayList<>();

    private References(Subject subject) {
        this.subject = subject;
        this.scope = subject.scope();
        this.faults = subject.procedure().map(procedure -> names(procedure.faults())).orElseGet(Map::of);
        libraries();
        subject.document().own().conditions().forEach(this::condition);
        subject.document().own().setUps().forEach(setUp -> setUp.settings().forEach(this::setting));
        subject.document().own().points().forEach(point -> isolation(point.isolated()));
        subject.document().own().parts().forEach(part -> isolation(part.isolated()));
        closesBy(subject.document()).ifPresent(name -> declared(name, Reference.Kind.ROUTINE, scope.routine(name), scope::routines));
        subject.graphs().forEach(this::graph);
        subject.procedure().ifPresent(this::faultsAndExamples);
    }

    private static Optional<Name> closesBy(Document document) {
        return document instanceof Procedure procedure ? procedure.closesBy() : ((Library) document).closesBy();
    }

    /** In the order of the kinds of parts, not of the text. */
    public static List<Reference> of(Subject subject) {
        return subject.shared(References.class, References::new).found;
    }

    private void libraries() {
        Map<String, Name> known = byText(subject.document().libraries().stream().map(Library::name));
        // Which libraries there are is not known: nobody searches whole trees of folders.
        subject.document().uses().forEach(name -> found.add(new Reference(name, Reference.Kind.LIBRARY,
                known.containsKey(name.text()),
                Optional.ofNullable(known.get(name.text())), List::of)));
    }

    private void condition(Condition condition) {
        condition.live().forEach(value -> value(value, condition));
        condition.charged().forEach(value -> value(value, condition));
        condition.becomes().forEach(becomes -> {
            value(becomes.value(), condition);
            setting(becomes.when());
        });
        condition.proved().ifPresent(proof -> proof.points().forEach(this::point));
        condition.starts().ifPresent(value -> value(value, condition));
        condition.ends().ifPresent(value -> value(value, condition));
    }

    private void isolation(Optional<Isolation> isolated) {
        isolated.ifPresent(stated -> stated.when().forEach(this::setting));
    }

    private void value(Name value, Condition condition) {
        add(value, Reference.Kind.VALUE, byText(condition.values().stream()));
    }

    private void setting(Setting setting) {
        if (setting.condition().isUnderstood()) {
            return;
        }
        Optional<Condition> condition = scope.condition(setting.condition());
        declared(setting.condition(), Reference.Kind.CONDITION, condition, scope::conditions);
        condition.ifPresent(known -> value(setting.value(), known));
    }

    private void graph(StepGraph graph) {
        List<Step> written = graph.writtenSteps();
        Map<String, Name> steps = names(written);
        Map<String, Name> targets = new LinkedHashMap<>(steps);
        graph.steps().stream().filter(ClosingStep::is).forEach(closing -> targets.put(closing.name().text(),
                steps.getOrDefault(ClosingStep.written(closing.name().text()), closing.name())));
        graph.exits().forEach(exit -> targets.putIfAbsent(exit.text(), exit));
        graph.leadsToFaults().forEach(fault -> targets.putIfAbsent(fault.name().text(), fault.name()));
        graph.begin().ifPresent(name -> add(name, Reference.Kind.STEP, steps));
        Map<String, Name> readings = graph.steps().stream().anyMatch(Step.Calculate.class::isInstance) ? readings(graph) : Map.of();
        for (Step step : written) {
            frame(step.frame());
            step.outcomes().forEach(outcome -> outcome(outcome, targets));
            mentioned(step, readings);
        }
    }

    private void frame(StepFrame frame) {
        frame.needs().forEach(this::setting);
        frame.setUps().forEach(name -> declared(name, Reference.Kind.SETUP, scope.setUp(name), scope::setUps));
        frame.sets().forEach(this::setting);
        frame.notes().forEach(name -> declared(name, Reference.Kind.NOTE, scope.note(name), scope::notes));
        frame.handles().forEach(name -> declared(name, Reference.Kind.PART, scope.part(name), scope::parts));
        frame.precautions().tries().forEach(name -> declared(name, Reference.Kind.INSTRUMENT, scope.instrument(name), scope::instruments));
    }

    private void outcome(Outcome outcome, Map<String, Name> targets) {
        outcome.target().ifPresent(name -> add(name, Reference.Kind.TARGET, targets));
        outcome.repeat().ifPresent(repeat -> add(repeat.otherwise(), Reference.Kind.TARGET, targets));
        outcome.proves().forEach(this::setting);
    }

    private void point(Name name) {
        declared(name, Reference.Kind.POINT, scope.point(name), scope::points);
    }

    private void faultsAndExamples(Procedure procedure) {
        Map<String, Name> steps = names(procedure.writtenSteps());
        Map<String, Name> ends = names(procedure.namedSteps());
        procedure.elsewhere().ifPresent(name -> add(name, Reference.Kind.STEP, steps));
        for (Fault fault : procedure.faults()) {
            fault.shows().stream().map(Showing::step).forEach(name -> add(name, Reference.Kind.STEP, steps));
            fault.remedies().forEach(name -> add(name, Reference.Kind.STEP, steps));
        }
        for (Example example : procedure.examples()) {
            example.of().ifPresent(name -> add(name, Reference.Kind.FAULT, faults));
            example.shows().stream().map(Showing::step).forEach(name -> add(name, Reference.Kind.STEP, steps));
            example.endsAt().ifPresent(name -> add(name, Reference.Kind.STEP, ends));
        }
    }

    private static Map<String, Name> names(List<? extends Declaration> declared) {
        Map<String, Name> names = new LinkedHashMap<>();
        declared.forEach(one -> names.putIfAbsent(one.name().text(), one.name()));
        return names;
    }

    private static Map<String, Name> byText(Stream<Name> names) {
        return names.collect(Collectors.toMap(Name::text, Function.identity(), (first, second) -> first,
                LinkedHashMap::new));
    }

    private void declared(Name name, Reference.Kind kind, Optional<? extends Declaration> thing,
            Supplier<? extends List<? extends Declaration>> all) {
        found.add(new Reference(name, kind, thing.isPresent(), thing.map(Declaration::name),
                () -> all.get().stream().map(one -> one.name().text()).toList()));
    }

    private void add(Name name, Reference.Kind kind, Map<String, Name> among) {
        if (name.isUnderstood()) {
            return;
        }
        Optional<Name> known = Optional.ofNullable(among.get(name.text()));
        found.add(new Reference(name, kind, known.isPresent(), known, () -> List.copyOf(among.keySet())));
    }

    /** What one kind of step alone refers to. @param readings the steps of its graph that give a reading */
    private void mentioned(Step step, Map<String, Name> readings) {
        for (Step.Mention mention : step.mentions()) {
            Name name = mention.name();
            switch (mention.thing()) {
                case INDICATOR -> declared(name, Reference.Kind.INDICATOR, scope.indicator(name), scope::indicators);
                case POINT -> point(name);
                case INSTRUMENT -> declared(name, Reference.Kind.INSTRUMENT, scope.instrument(name), scope::instruments);
                case ROUTINE -> declared(name, Reference.Kind.ROUTINE, scope.routine(name), scope::routines);
                case FAULT -> add(name, Reference.Kind.FAULT, faults);
            }
        }
        if (step instanceof Step.Calculate calculate) {
            formula(calculate, readings);
        }
    }

    private void formula(Step.Calculate step, Map<String, Name> readings) {
        for (FormulaWords.Leaf leaf : FormulaWords.leaves(step)) {
            Name name = new Name(leaf.text(), leaf.at());
            if (leaf.isReading()) {
                add(name, Reference.Kind.READING, readings);
            } else if (leaf.isFunction()) {
                found.add(new Reference(name, Reference.Kind.FUNCTION, FormulaWords.FUNCTIONS.contains(leaf.text()),
                        Optional.empty(), () -> FormulaWords.FUNCTIONS));
            }
        }
    }

    private static Map<String, Name> readings(StepGraph graph) {
        Set<String> giving = Set.copyOf(FormulaWords.readingSteps(graph));
        return byText(graph.steps().stream().map(Step::name).filter(name -> giving.contains(name.text())));
    }
}

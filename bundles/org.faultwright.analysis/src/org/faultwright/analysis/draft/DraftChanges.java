/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.faults.DraftSteps;
import org.faultwright.analysis.order.SetUpChanges;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;

/**
 * What a draft changes the set-up with: acts declared for it, the routines in scope, and, for conditions that
 * neither brings about, acts to be filled in. Stored charge is never simply declared absent.
 */
final class DraftChanges {
    private final Procedure procedure;
    private final DraftSteps steps;
    private final SourceRange here;

    DraftChanges(Procedure procedure, DraftSteps steps) {
        this.procedure = procedure;
        this.steps = steps;
        this.here = procedure.name().at();
    }

    List<SetUpChanges.ChangingStep> movers() {
        Set<String> remedies = procedure.faults().stream().flatMap(fault -> fault.remedies().stream()).map(Name::text)
                .collect(Collectors.toSet());
        List<SetUpChanges.ChangingStep> found = new ArrayList<>();
        steps.all().stream().filter(step -> step instanceof Step.Do task && task.repairs().isEmpty() && task.erases().isEmpty()
                && !task.frame().sets().isEmpty() && !remedies.contains(task.name().text()) && task.outcomes().size() == 1)
                .forEach(step -> found.add(new SetUpChanges.ChangingStep(step, step.outcomes().get(0))));
        procedure.scope().routines().stream().filter(routine -> !routine.exits().isEmpty() && routine.steps().stream()
                .noneMatch(step -> step.frame().verifies().isPresent())).forEach(routine -> found.add(performing(routine)));
        settingsWanted().filter(setting -> !isEstablished(setting, found)).forEach(setting -> found.add(setting(setting)));
        return found;
    }

    private SetUpChanges.ChangingStep performing(Routine routine) {
        Optional<Step> declared = steps.all().stream().filter(step -> step instanceof Step.Perform perform
                && perform.routine().map(Name::text).filter(routine.name().text()::equals).isPresent()
                && perform.outcomes().size() == routine.exits().size()).findFirst();
        Step step = declared.orElseGet(() -> steps.made(routine.name().text(), () -> new Step.Perform(
                new Name(steps.free("Do" + routine.name()), here), routine.title(), Optional.of(routine.name()), StepFrame.PLAIN,
                DraftSteps.outcomes(routine.exits().stream().map(Name::text).toList(), here), here)));
        return new SetUpChanges.ChangingStep(step, step.outcomes().get(0));
    }

    private Stream<Setting> settingsWanted() {
        Stream<Setting> needed = steps.all().stream().flatMap(step -> step.frame().needs().stream());
        Stream<Setting> ending = procedure.scope().conditions().stream().flatMap(condition -> condition.ends().stream()
                .map(end -> new Setting(condition.name(), end, here)));
        return Stream.concat(needed, ending).collect(Collectors.toMap(setting -> setting.condition() + " " + setting.value(),
                setting -> setting, (one, other) -> one, LinkedHashMap::new)).values().stream()
                .filter(setting -> procedure.scope().condition(setting.condition())
                        .filter(condition -> condition.charged().isEmpty()
                        && condition.has(setting.value())).isPresent());
    }

    private boolean isEstablished(Setting wanted, List<SetUpChanges.ChangingStep> movers) {
        return changesTo(wanted, movers).findAny().isPresent();
    }

    private Stream<Setting> changesTo(Setting wanted, List<SetUpChanges.ChangingStep> movers) {
        Stream<Setting> left = movers.stream().flatMap(mover -> Stream.concat(mover.step().frame().sets().stream(),
                procedure.scope().performedBy(mover.step()).stream()
                        .flatMap(routine -> routine.steps().stream()).flatMap(step -> step.frame().sets().stream())));
        return left.filter(setting -> setting.condition().text().equals(wanted.condition().text())
                && setting.value().text().equals(wanted.value().text()));
    }

    private SetUpChanges.ChangingStep setting(Setting wanted) {
        Condition condition = procedure.scope().condition(wanted.condition()).orElseThrow();
        String value = wanted.value().text();
        String name = steps.free("Set" + condition.name() + Character.toUpperCase(value.charAt(0)) + value.substring(1));
        String title = condition.title().isBlank() ? DraftSteps.title(condition.name().text()) : condition.title();
        Step step = steps.made(name, () -> new Step.Do(new Name(name, here), title + ": " + value,
                Optional.empty(), Optional.empty(), List.of(),
                DraftSteps.frame(List.of(), List.of(wanted)), DraftSteps.outcomes(List.of(Step.DONE), here), here));
        return new SetUpChanges.ChangingStep(step, step.outcomes().get(0));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;

/** One step with all that is read before its results are ticked. */
final class StepPart {
    private final Plan plan;

    StepPart(Plan plan) {
        this.plan = plan;
    }

    void add(Tag into, Section section, Step step) {
        Tag box = into.add("section", "step").id(plan.anchor(step));
        StepFrame frame = step.frame();
        Tag heading = box.add("h3");
        heading.say("span", "number", plan.label(step)).space();
        heading.say("span", "title", Words.title(step));
        facts(box.add("p", "facts"), step);
        frame.notes().stream().flatMap(name -> plan.scope().note(name).stream())
                .forEach(note -> NotesPart.atStep(box, note));
        if (!frame.needs().isEmpty()) {
            settings(box, "Set-up", frame.needs());
        }
        frame.waits().ifPresent(wait -> line(box, "Wait", wait.value().spelling()));
        new StepDetail(plan, box).add(step);
        parts(box, frame);
        frame.hint().ifPresent(hint -> line(box, "Hint", hint.value()));
        if (!step.outcomes().isEmpty()) {
            new ResultTable(plan, section).add(box, step);
        }
        if (!frame.sets().isEmpty()) {
            settings(box, "Leaves", frame.sets());
        }
        frame.source().ifPresent(source -> box.say("p", "source", "Source: " + Words.source(source)));
    }

    private static void facts(Tag facts, Step step) {
        StepFrame frame = step.frame();
        facts.say("span", "kind", Words.kind(step)).space();
        String more = Stream.of(
                frame.confirms().map(at -> "confirms the complaint"),
                frame.verifies().map(at -> "proves the repair"),
                step instanceof Step.Do task ? task.repairs().map(at -> "repair") : Optional.<String>empty(),
                frame.time().map(time -> "about " + time.value().spelling()))
                .flatMap(Optional::stream).collect(Collectors.joining(" \u00B7 "));
        if (!more.isEmpty()) {
            facts.text("\u00B7 " + more).space();
        }
        facts.say("span", "name", step.name().text());
    }

    private void settings(Tag box, String key, List<Setting> settings) {
        Tag line = box.add("p", "line");
        line.say("b", "key", key).space();
        settings.forEach(setting -> line.say("span", "chip", Words.setting(setting, plan.scope())).space());
    }

    private void parts(Tag box, StepFrame frame) {
        String handled = frame.handles().stream().map(name -> plan.scope().part(name).map(Part::title)
                .filter(title -> !title.isBlank()).orElse(name.text())).collect(Collectors.joining(", "));
        if (!handled.isEmpty()) {
            line(box, "Part", handled);
        }
        frame.precautions().liveBecause().ifPresent(reason -> line(box, "Live work", reason.value()));
        if (!frame.tools().isEmpty()) {
            line(box, "Tools", frame.tools().stream().map(tool -> tool.value() + rating(frame, tool)).collect(Collectors.joining(", ")));
        }
        Stream<Hazard> partHazards = frame.handles().stream().flatMap(name -> plan.scope().part(name).stream())
                .flatMap(part -> part.hazards().stream()).map(Written::value);
        String hazards = Stream.concat(frame.hazards().stream().map(Written::value), partHazards).distinct()
                .map(Words::hazard).collect(Collectors.joining(", "));
        if (!hazards.isEmpty()) {
            line(box, "Hazards", hazards);
        }
    }

    private static String rating(StepFrame frame, Written<String> tool) {
        return frame.precautions().rated().stream().filter(rated -> rated.tool().equals(tool)).findFirst()
                .map(rated -> " (rated " + rated.upTo().value().spelling() + ")").orElse("");
    }

    static Tag line(Tag box, String key, String words) {
        return box.add("p", "line").say("b", "key", key).space().text(words);
    }
}

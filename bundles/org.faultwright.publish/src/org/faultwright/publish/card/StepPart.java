/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Placed;
import org.faultwright.publish.plan.Plan;

/** One step with all that is read before its results are ticked. */
final class StepPart {
    private final Plan plan;

    StepPart(Plan plan) {
        this.plan = plan;
    }

    void add(Tag into, Placed placed) {
        Step step = placed.step();
        Tag box = into.add("section", placed.run().caller().isPresent() ? "step inner" : "step").id(placed.anchor());
        StepFrame frame = step.frame();
        Tag heading = box.add(placed.run().caller().isPresent() ? "h4" : "h3");
        heading.say("span", "number", placed.label()).space();
        heading.say("span", "title", Wording.title(step));
        facts(box.add("p", "facts"), step);
        frame.notes().stream().flatMap(name -> plan.scope().note(name).stream())
                .forEach(note -> NotesPart.atStep(box, note));
        if (!frame.needs().isEmpty()) {
            settings(box, "Set-up", frame.needs());
        }
        frame.waits().ifPresent(wait -> line(box, "Wait", Wording.printed(wait.value())));
        new StepDetail(plan, box).add(placed);
        StepPictures.of(step, plan.scope()).forEach(picture -> StepPictures.add(box, picture));
        parts(box, frame);
        frame.hint().ifPresent(hint -> line(box, "Hint", hint.value()));
        if (!frame.sets().isEmpty() && plan.inside(placed).isEmpty()) {
            settings(box, "Then", frame.sets());
        }
        if (!plan.inside(placed).isEmpty()) {
            plan.inside(placed).forEach(inner -> add(box, inner));
        } else if (!step.outcomes().isEmpty()) {
            new ResultTable(plan).add(box, placed);
        }
        if (!frame.sets().isEmpty() && !plan.inside(placed).isEmpty()) {
            settings(box, "Then", frame.sets());
        }
        frame.source().ifPresent(source -> box.say("p", "source", "Source: " + Wording.source(source)));
    }

    private static void facts(Tag facts, Step step) {
        StepFrame frame = step.frame();
        facts.say("span", "kind", Wording.kind(step)).space();
        String more = Stream.of(
                frame.confirms().map(at -> "confirms the complaint"),
                frame.verifies().map(at -> "proves the repair"),
                step instanceof Step.Do task ? task.repairs().map(at -> "repair") : Optional.<String>empty(),
                frame.time().map(time -> "about " + Wording.printed(time.value())))
                .flatMap(Optional::stream).collect(Collectors.joining(" \u00B7 "));
        if (!more.isEmpty()) {
            facts.text("\u00B7 " + more);
        }
    }

    private void settings(Tag box, String key, List<Setting> settings) {
        Tag line = box.add("p", "line");
        line.say("b", "key", key).space();
        settings.forEach(setting -> line.say("span", "chip", Wording.setting(setting, plan.scope())).space());
    }

    private void parts(Tag box, StepFrame frame) {
        String handled = frame.handles().stream().map(name -> plan.scope().part(name).map(Part::title)
                .filter(title -> !title.isBlank()).orElse(name.text())).collect(Collectors.joining(", "));
        if (!handled.isEmpty()) {
            line(box, "Part", handled);
        }
        frame.precautions().liveBecause().ifPresent(reason -> line(box, "Live work", reason.value()));
        if (!frame.tools().isEmpty()) {
            line(box, "Tools", Wording.tools(frame));
        }
        String hazards = Wording.hazards(frame, plan.scope());
        if (!hazards.isEmpty()) {
            line(box, "Hazards", hazards);
        }
    }

    static Tag line(Tag box, String key, String words) {
        return box.add("p", "line").say("b", "key", key).space().text(words);
    }
}

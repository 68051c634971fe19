/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;

/** One step: what is read and done first, and beside it or below what is seen then, with where it leads. */
final class StepPart {
    /** Where every way ends. */
    static final String CLOSE = "close-the-job";

    private final CardPlan plan;
    private final NotesPart notes;
    private final CardSources sources;
    private final StepDetail detail;
    private final ResultTable results;

    StepPart(CardPlan plan, UsedDeclarations used, NotesPart notes, CardSources sources) {
        this.plan = plan;
        this.notes = notes;
        this.sources = sources;
        this.detail = new StepDetail(plan, sources, Wording.shortly(used.instruments().keySet()));
        this.results = new ResultTable(plan);
    }

    /** @param times how often the steps that follow may be come by, each time with boxes of its own */
    void visited(int times) {
        detail.visited(times);
        results.visited(times);
    }

    void add(Tag into, PlacedStep placed) {
        Step step = placed.step();
        boolean inner = placed.run().caller().isPresent();
        Tag box = into.add("section", inner ? "step inner" : "step").id(placed.anchor());
        Tag told = box.add("div", "told");
        StepFrame frame = step.frame();
        // before the order: who reads that acts on it
        Wording.notes(frame, plan.scope()).forEach(note -> notes.atStep(told, note));
        head(told.add(inner ? "h4" : "h3"), placed);
        settings(told, "With", frame.needs());
        detail.add(told, placed);
        StepPictures.of(step, plan.scope()).forEach(picture -> StepPictures.add(told, picture));
        handling(told, frame);
        if (!(step instanceof Step.Measure)) {
            frame.hint().ifPresent(hint -> told.say("p", "line", hint.value()));
        }
        if (!plan.inside(placed).isEmpty()) {
            plan.inside(placed).forEach(one -> add(into, one));
            settings(into, "Then", frame.sets());
            return;
        }
        settings(told, "Then", frame.sets());
        if (!step.outcomes().isEmpty()) {
            Optional<Outcome> only = PaperOutcomes.only(step);
            Tag seen = box.add("div", "answers");
            only.ifPresentOrElse(outcome -> results.only(seen, placed, outcome), () -> results.add(seen, placed));
        }
        if (step instanceof Step.Conclude) {
            box.add("div", "answers").add("p", "go").link(CLOSE, "way", "Close the job").text(Wording.ARROW + " Close the job");
        }
    }

    private void head(Tag heading, PlacedStep placed) {
        StepFrame frame = placed.step().frame();
        heading.say("span", "number", placed.label()).space();
        heading.say("span", "title", Wording.title(placed.step()));
        Stream.of(frame.takes().map(time -> Wording.printed(time.value())),
                frame.waits().map(wait -> "wait " + Wording.printed(wait.value())),
                frame.confirms().map(at -> "confirms the complaint"),
                frame.verifies().map(at -> "proves the repair"))
                .flatMap(Optional::stream).forEach(more -> heading.space().say("span", "more", "\u00B7 " + more));
        frame.source().ifPresent(source -> sources.cite(heading, source));
    }

    private void settings(Tag box, String key, List<Setting> settings) {
        if (!settings.isEmpty()) {
            Tag line = box.add("p", "line");
            line.say("span", "key", key).space();
            settings.forEach(setting -> line.say("span", "chip", Wording.setting(setting, plan.scope())).space());
        }
    }

    private void handling(Tag box, StepFrame frame) {
        key(box, "In hand", frame.handles().stream().map(name -> plan.scope().part(name).map(Part::title)
                .filter(title -> !title.isBlank()).orElse(name.text())).collect(Collectors.joining(", ")));
        key(box, "Tools", Wording.tools(frame));
        key(box, "Mind", Wording.hazards(frame, plan.scope()));
        frame.precautions().liveBecause().ifPresent(reason -> line(box, "Live work").say("b", "", reason.value()));
    }

    private static void key(Tag box, String key, String words) {
        if (!words.isEmpty()) {
            line(box, key, words);
        }
    }

    static Tag line(Tag box, String key) {
        return box.add("p", "line").say("span", "key", key).space();
    }

    static Tag line(Tag box, String key, String words) {
        return line(box, key).text(words);
    }
}

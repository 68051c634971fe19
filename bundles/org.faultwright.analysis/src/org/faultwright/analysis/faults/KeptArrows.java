/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.RunningOn;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** The arrows that lead to the step below without being written, kept when the text between the two steps changes: each is written out then. */
public final class KeptArrows {
    private static final Pattern MUST_SAY = Pattern.compile("\\b(verifies|exits|normal|anything|expects)\\b");

    private final List<RunningOn.Arrow> arrows = new ArrayList<>();

    private final List<SourceRange> routines;

    private KeptArrows(Document document) {
        routines = document.own().routines().stream().map(Routine::at).toList();
        document.graphs().forEach(graph -> arrows.addAll(RunningOn.arrows(graph)));
    }

    /** Those of the document that rules look at. */
    public static KeptArrows in(Subject subject) {
        return subject.shared(KeptArrows.class, one -> new KeptArrows(one.document()));
    }

    /** The change that writes the arrow out, to there or to another step. The outcomes stay in their order. */
    public static Fix.Edit written(RunningOn.Arrow arrow, String target) {
        List<Outcome> outcomes = arrow.step().outcomes();
        Optional<SourceRange> next = outcomes.subList(outcomes.indexOf(arrow.outcome()) + 1, outcomes.size()).stream().filter(one -> !one.isUnderstood())
                .map(Outcome::at).findFirst();
        SourceRange place = next.map(at -> new SourceRange(at.source(), at.offset(), 0)).orElse(arrow.outcome().at());
        String text = place.source().content();
        String before = text.substring(text.lastIndexOf('\n', place.offset() - 1) + 1, place.offset());
        String line = ResultWords.arrow(arrow.outcome(), target);
        return new Fix.Edit(place, !before.isBlank() ? line.strip() + " " : next.isPresent() ? line.strip() + "\n" + before : line + before);
    }

    /** The fix with each arrow written out whose two steps it parts. */
    public static Fix kept(Document document, Fix fix) {
        return new KeptArrows(document).kept(fix);
    }

    /** The fix with each arrow written out whose two steps it parts. */
    public Fix kept(Fix fix) {
        List<Fix.Edit> edits = new ArrayList<>(fix.edits());
        arrows.stream().filter(arrow -> (isParted(arrow, fix.edits()) || isMadeToSay(arrow, fix.edits())) && !isRewritten(arrow, fix.edits()))
                .forEach(arrow -> edits.add(written(arrow, arrow.below().name().text())));
        return edits.size() == fix.edits().size() ? fix : new Fix(fix.title(), List.copyOf(edits));
    }

    private static boolean isParted(RunningOn.Arrow arrow, List<Fix.Edit> edits) {
        SourceRange from = arrow.step().at();
        SourceRange to = arrow.below().at();
        return edits.stream().map(Fix.Edit::at).anyMatch(at -> at.source().name().equals(from.source().name())
                && at.offset() <= to.offset() && at.end() >= from.end());
    }

    /** Whether the change makes a step, or a routine that steps perform, one that must say where it leads. */
    private boolean isMadeToSay(RunningOn.Arrow arrow, List<Fix.Edit> edits) {
        return edits.stream().filter(edit -> MUST_SAY.matcher(edit.replacement()).find()).map(Fix.Edit::at).anyMatch(at -> isWithin(at, arrow.step().at())
                || arrow.step() instanceof Step.Perform && routines.stream().anyMatch(routine -> isWithin(at, routine)));
    }

    private static boolean isWithin(SourceRange at, SourceRange whole) {
        return at.offset() > whole.offset() && at.end() < whole.end();
    }

    /** Whether the change writes the step anew, or this arrow of it. */
    private static boolean isRewritten(RunningOn.Arrow arrow, List<Fix.Edit> edits) {
        int place = arrow.outcome().at().offset();
        SourceRange step = arrow.step().at();
        String head = ResultWords.arrow(arrow.outcome(), "").strip();
        return edits.stream().anyMatch(edit -> edit.at().offset() < place && edit.at().end() > place
                || edit.at().offset() > step.offset() && edit.at().end() <= place && edit.replacement().strip().startsWith(head));
    }
}

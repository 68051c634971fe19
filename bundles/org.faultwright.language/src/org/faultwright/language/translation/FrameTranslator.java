/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.faultwright.language.text.ConfirmsText;
import org.faultwright.language.text.FrameText;
import org.faultwright.language.text.HandlesText;
import org.faultwright.language.text.HazardsText;
import org.faultwright.language.text.HintText;
import org.faultwright.language.text.LiveText;
import org.faultwright.language.text.NeedsText;
import org.faultwright.language.text.NotesText;
import org.faultwright.language.text.SetsText;
import org.faultwright.language.text.StepPictureText;
import org.faultwright.language.text.StepSourceText;
import org.faultwright.language.text.StepToolsText;
import org.faultwright.language.text.TakesText;
import org.faultwright.language.text.TestsText;
import org.faultwright.language.text.TextPackage;
import org.faultwright.language.text.TriesText;
import org.faultwright.language.text.UnitText;
import org.faultwright.language.text.VerifiesText;
import org.faultwright.language.text.WaitText;
import org.faultwright.language.text.util.TextSwitch;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;

/** What every kind of step can say. */
final class FrameTranslator {
    private final Translators parts;

    FrameTranslator(Translators parts) {
        this.parts = parts;
    }

    StepFrame frame(List<FrameText> written) {
        if (written.isEmpty()) {
            return StepFrame.PLAIN;
        }
        Gathering gathering = new Gathering();
        written.forEach(gathering::doSwitch);
        return gathering.frame();
    }

    /** Lists add up over several lines; what can only be said once is reported when it is said again. */
    private final class Gathering extends TextSwitch<Boolean> {
        private final List<Setting> needs = new ArrayList<>();
        private final List<Name> setUps = new ArrayList<>();
        private final List<Setting> sets = new ArrayList<>();
        private final List<Name> notes = new ArrayList<>();
        private final List<Name> handles = new ArrayList<>();
        private final List<Written<String>> tools = new ArrayList<>();
        private final List<Written<Hazard>> hazards = new ArrayList<>();
        private final List<TakesText> takes = new ArrayList<>();
        private final List<ConfirmsText> confirms = new ArrayList<>();
        private final List<VerifiesText> verifies = new ArrayList<>();
        private final List<StepSourceText> sources = new ArrayList<>();
        private final List<LiveText> live = new ArrayList<>();
        private final List<Name> tries = new ArrayList<>();
        private final List<Written<ProtectiveTest>> tests = new ArrayList<>();
        private final List<Precautions.RatedTool> rated = new ArrayList<>();
        private final List<Picture> pictures = new ArrayList<>();
        private final List<WaitText> waits = new ArrayList<>();
        private final List<HintText> hints = new ArrayList<>();

        StepFrame frame() {
            ModelSource passage = parts.passage;
            Optional<Written<Quantity>> time = passage.single(takes, "The time of this step")
                    .flatMap(text -> parts.quantities.quantity(text.getTime()));
            Optional<Source> source = passage.single(sources, "The source of this step")
                    .flatMap(text -> SourceTranslator.source(parts, text.getSource()));
            Optional<Written<String>> hint = passage.single(hints, "The hint of this step")
                    .flatMap(text -> passage.node(text, TextPackage.Literals.HINT_TEXT__HINT)).map(passage::text);
            return new StepFrame(List.copyOf(needs), List.copyOf(setUps), List.copyOf(sets), List.copyOf(notes), List.copyOf(handles), time,
                    List.copyOf(tools), List.copyOf(hazards), first(confirms, "That it confirms the complaint"),
                    first(verifies, "That it verifies the repair"), source, hint, waiting(), List.copyOf(pictures), precautions());
        }

        private Optional<Written<Quantity>> waiting() {
            return parts.passage.single(waits, "How long this step waits").flatMap(text -> parts.quantities.quantity(text.getTime()));
        }

        private Precautions precautions() {
            ModelSource passage = parts.passage;
            Optional<Written<String>> reason = passage.single(live, "Why it is done live")
                    .flatMap(text -> passage.node(text, TextPackage.Literals.LIVE_TEXT__REASON)).map(passage::text);
            return reason.isEmpty() && tries.isEmpty() && tests.isEmpty() && rated.isEmpty() ? Precautions.NONE
                    : new Precautions(reason, List.copyOf(tries), List.copyOf(tests), List.copyOf(rated));
        }

        private <T extends EObject> Optional<SourceRange> first(List<T> written, String what) {
            return parts.passage.single(written, what).map(parts.passage::range);
        }

        @Override
        public Boolean caseNeedsText(NeedsText written) {
            return needs.addAll(parts.settings.all(written.getSettings()));
        }

        @Override
        public Boolean caseUnitText(UnitText written) {
            return setUps.addAll(parts.passage.names(written, TextPackage.Literals.UNIT_TEXT__SET_UPS));
        }

        @Override
        public Boolean caseSetsText(SetsText written) {
            return sets.addAll(parts.settings.all(written.getSettings()));
        }

        @Override
        public Boolean caseNotesText(NotesText written) {
            return notes.addAll(parts.passage.names(written, TextPackage.Literals.NOTES_TEXT__NOTES));
        }

        @Override
        public Boolean caseHandlesText(HandlesText written) {
            return handles.addAll(parts.passage.names(written, TextPackage.Literals.HANDLES_TEXT__PARTS));
        }

        @Override
        public Boolean caseStepToolsText(StepToolsText written) {
            List<Written<String>> named = parts.passage.texts(written, TextPackage.Literals.STEP_TOOLS_TEXT__TOOLS);
            written.getRated().forEach(text -> parts.quantities.quantity(text).ifPresent(upTo -> named.stream()
                    .filter(tool -> tool.at().end() <= upTo.at().offset()).reduce((first, later) -> later)
                    .ifPresent(tool -> rated.add(new Precautions.RatedTool(tool, upTo)))));
            return tools.addAll(named);
        }

        @Override
        public Boolean caseLiveText(LiveText written) {
            return live.add(written);
        }

        @Override
        public Boolean caseTriesText(TriesText written) {
            return tries.addAll(parts.passage.names(written, TextPackage.Literals.TRIES_TEXT__INSTRUMENTS));
        }

        @Override
        public Boolean caseTestsText(TestsText written) {
            parts.passage.nodes(written, TextPackage.Literals.TESTS_TEXT__TESTS).forEach(node -> parts.vocabulary
                    .oneOf(ProtectiveTest.values(), node, "protective test")
                    .ifPresent(test -> tests.add(new Written<>(test, parts.passage.range(node)))));
            return true;
        }

        @Override
        public Boolean caseHazardsText(HazardsText written) {
            return hazards.addAll(parts.vocabulary.hazards(written, TextPackage.Literals.HAZARDS_TEXT__HAZARDS));
        }

        @Override
        public Boolean caseTakesText(TakesText written) {
            return takes.add(written);
        }

        @Override
        public Boolean caseConfirmsText(ConfirmsText written) {
            return confirms.add(written);
        }

        @Override
        public Boolean caseVerifiesText(VerifiesText written) {
            return verifies.add(written);
        }

        @Override
        public Boolean caseStepSourceText(StepSourceText written) {
            return sources.add(written);
        }

        @Override
        public Boolean caseStepPictureText(StepPictureText written) {
            return pictures.addAll(parts.pictures.picture(written.getPicture()).toList());
        }

        @Override
        public Boolean caseWaitText(WaitText written) {
            return waits.add(written);
        }

        @Override
        public Boolean caseHintText(HintText written) {
            return hints.add(written);
        }

        @Override
        public Boolean defaultCase(EObject unknown) {
            return true;
        }
    }
}

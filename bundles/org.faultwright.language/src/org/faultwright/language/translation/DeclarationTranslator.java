/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.*;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.faultwright.language.text.AmbientText;
import org.faultwright.language.text.BecomesText;
import org.faultwright.language.text.BeginText;
import org.faultwright.language.text.CodeText;
import org.faultwright.language.text.ConditionText;
import org.faultwright.language.text.DeclarationText;
import org.faultwright.language.text.ExitText;
import org.faultwright.language.text.IndicatorText;
import org.faultwright.language.text.InstrumentText;
import org.faultwright.language.text.IsolatedText;
import org.faultwright.language.text.NoteText;
import org.faultwright.language.text.PartText;
import org.faultwright.language.text.PointText;
import org.faultwright.language.text.RoutineText;
import org.faultwright.language.text.SetUpText;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.NamedSetUp;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Proof;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Waveform;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** The declarations that a library shares and a procedure may also hold for itself. */
final class DeclarationTranslator {
    private final Translators parts;
    private final ModelSource passage;
    private final InstrumentTranslator instruments;

    DeclarationTranslator(Translators parts, InstrumentTranslator instruments) {
        this.parts = parts;
        this.passage = parts.passage;
        this.instruments = instruments;
    }

    Declarations all(List<DeclarationText> written, List<AmbientText> ambient) {
        return new Declarations(all(written, ConditionText.class, this::condition),
                all(written, SetUpText.class, this::setUp),
                all(written, InstrumentText.class, this::instrument),
                all(written, PointText.class, this::point),
                all(written, PartText.class, this::part),
                all(written, IndicatorText.class, this::indicator),
                all(written, NoteText.class, this::note),
                all(written, RoutineText.class, this::routine), ambient(ambient));
    }

    private Optional<Written<Limit>> ambient(List<AmbientText> written) {
        Optional<Written<Limit>> limit = passage.single(written, "The temperatures at the bench")
                .flatMap(text -> Optional.ofNullable(text.getLimit())).flatMap(parts.limits::limit);
        limit.filter(stated -> stated.value().fits(QuantityKind.TEMPERATURE) && stated.value().interval().isEmpty())
                .ifPresent(stated -> passage.problem(stated.at(),
                        "The temperatures at the bench run downwards; write the lower one first."));
        return limit;
    }

    private <T extends DeclarationText, D> List<D> all(List<DeclarationText> written, Class<T> kind, Function<T, D> translation) {
        return written.stream().filter(kind::isInstance).map(kind::cast).map(one -> parts.kept.of(one, () -> translation.apply(one))).toList();
    }

    private Name name(DeclarationText written) {
        return passage.nameOrNone(written, NAMED_TEXT__NAME);
    }

    private String title(DeclarationText written) {
        return passage.textOrNone(written, DECLARATION_TEXT__TITLE);
    }

    private Condition condition(ConditionText written) {
        return new Condition(name(written), title(written),
                written.getValues().stream().flatMap(value -> passage.name(value, NAMED_TEXT__NAME).stream()).toList(),
                passage.names(written, CONDITION_TEXT__LIVE), passage.names(written, CONDITION_TEXT__CHARGED),
                written.getBecomes().stream().flatMap(becomes -> becomes(becomes).stream()).toList(),
                proof(written), written.isMayChangeLive(),
                passage.single(written, CONDITION_TEXT__STARTS, "Where the condition starts").map(passage::name),
                passage.single(written, CONDITION_TEXT__ENDS, "Where the condition ends").map(passage::name),
                passage.range(written));
    }

    private NamedSetUp setUp(SetUpText written) {
        parts.unread.withinBraces(written, SET_UP_TEXT__UNREAD);
        return new NamedSetUp(name(written), title(written), parts.settings.all(written.getSettings()), passage.range(written));
    }

    private Optional<Condition.Becomes> becomes(BecomesText written) {
        return Optional.ofNullable(written.getSetting()).map(setting -> new Condition.Becomes(
                passage.nameOrNone(written, BECOMES_TEXT__VALUE), parts.settings.setting(setting), passage.range(written)));
    }

    private Optional<Proof> proof(ConditionText written) {
        return passage.single(written.getProofs(), "Where the charge is proved absent").map(proof -> new Proof(
                passage.names(proof, PROOF_TEXT__POINTS),
                Optional.ofNullable(proof.getLimit()).flatMap(parts.limits::limit), passage.range(proof)));
    }

    private Optional<Isolation> isolation(List<IsolatedText> written) {
        return passage.single(written, "That it is isolated")
                .map(text -> new Isolation(parts.settings.all(text.getSettings()), passage.range(text)));
    }

    private Instrument instrument(InstrumentText written) {
        parts.unread.withinBraces(written, INSTRUMENT_TEXT__UNREAD);
        return instruments.instrument(written);
    }

    private Point point(PointText written) {
        QuantityKind kind = parts.vocabulary.voltage(passage.node(written, POINT_TEXT__FORM));
        return new Point(name(written), title(written),
                parts.quantities.single(written.getCarries(), "What the point carries")
                        .map(upTo -> new Point.Carried(upTo, kind, frequencies(written), waveform(written))),
                parts.quantities.single(written.getSourceResistance(), "The source resistance"),
                parts.quantities.single(written.getStores(), "What the point stores"),
                parts.quantities.single(written.getDrainedBy(), "What drains the point"),
                passage.single(written, POINT_TEXT__CATEGORY, "The measurement category")
                        .flatMap(node -> parts.quantities.whole(node, "The measurement category")),
                parts.vocabulary.hazards(written, POINT_TEXT__HAZARDS), isolation(written.getIsolated()),
                parts.pictures.all(written.getPictures()), passage.range(written));
    }

    private Optional<Point.Frequencies> frequencies(PointText written) {
        List<Written<Quantity>> stated = written.getFrequency().stream().flatMap(text -> parts.quantities.quantity(text).stream())
                .toList();
        return stated.isEmpty() ? Optional.empty()
                : Optional.of(new Point.Frequencies(stated.get(0), stated.get(Math.min(1, stated.size() - 1))));
    }

    private Optional<Written<Waveform>> waveform(PointText written) {
        return passage.node(written, POINT_TEXT__WAVEFORM).flatMap(node -> parts.vocabulary.oneOf(Waveform.values(), node, "waveform")
                .map(known -> new Written<>(known, passage.range(node))));
    }

    private Part part(PartText written) {
        return new Part(name(written), title(written), parts.vocabulary.hazards(written, PART_TEXT__HAZARDS), isolation(written.getIsolated()),
                parts.quantities.single(written.getDrains(), "What drains the charge"),
                parts.quantities.single(written.getRated(), "What the part is rated for"),
                passage.single(written, PART_TEXT__NUMBER, "The part number").map(passage::text),
                passage.single(written, PART_TEXT__STOCK, "How many to have at hand")
                        .flatMap(node -> parts.quantities.whole(node, "How many to have at hand")),
                parts.pictures.all(written.getPictures()),
                passage.range(written));
    }

    private Indicator indicator(IndicatorText written) {
        parts.unread.withinBraces(written, INDICATOR_TEXT__UNREAD);
        Optional<Source> source = passage.single(written.getSource(), "The source of this indicator")
                .flatMap(text -> SourceTranslator.source(parts, text));
        return new Indicator(name(written), title(written), written.getCodes().stream().map(this::code).toList(), source,
                parts.pictures.all(written.getPictures()),
                passage.range(written));
    }

    private Indicator.Code code(CodeText written) {
        return new Indicator.Code(passage.nameOrNone(written, CODE_TEXT__PATTERN),
                passage.textOrNone(written, CODE_TEXT__MEANING), passage.range(written));
    }

    private Note note(NoteText written) {
        parts.unread.withinBraces(written, NOTE_TEXT__UNREAD);
        return new Note(name(written), parts.vocabulary.signalWord(passage.node(written, NOTE_TEXT__WORD)),
                parts.vocabulary.hazards(written, NOTE_TEXT__COVERS), only(written, NOTE_TEXT__HAZARD, "The hazard"),
                only(written, NOTE_TEXT__CONSEQUENCE, "The consequence"),
                only(written, NOTE_TEXT__AVOID, "How to avoid it"), passage.range(written));
    }

    private String only(EObject written, EStructuralFeature feature, String what) {
        return passage.single(written, feature, what).map(passage::words).orElse("");
    }

    private Routine routine(RoutineText written) {
        parts.unread.withinBraces(written, ROUTINE_TEXT__UNREAD);
        return new Routine(name(written), title(written),
                written.getExits().stream().flatMap(exit -> passage.name(exit, NAMED_TEXT__NAME).stream()).toList(),
                written.getExits().stream().filter(ExitText::isNormal).findFirst().flatMap(exit -> passage.name(exit, NAMED_TEXT__NAME)),
                parts.quantities.single(written.getTakes(), "How long this routine takes"), begin(written.getBegins()),
                parts.steps.all(written.getSteps()), passage.range(written));
    }

    Optional<Name> begin(List<BeginText> written) {
        return passage.single(written, "Where it begins").flatMap(begin -> passage.name(begin, BEGIN_TEXT__STEP));
    }
}

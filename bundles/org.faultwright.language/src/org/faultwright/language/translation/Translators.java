/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.Map;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.procedure.SourceText;

/** The translators of one text, put together. */
final class Translators {
    final ModelSource passage;
    final KeptTranslations.Taking kept;
    final UnreadWords unread;
    final QuantityTranslator quantities;
    final LimitTranslator limits;
    final Vocabulary vocabulary;
    final SettingTranslator settings;
    final PictureReader pictures;
    final FrameTranslator frames;
    final OutcomeTranslator outcomes;
    final StepTranslator steps;
    final ShowingTranslator showings;
    final DeclarationTranslator declarations;

    /** @param blocks where each element that a block was parsed into begins; empty for a text that was parsed as a whole */
    Translators(SourceText source, Map<INode, Integer> starts, Map<EObject, Integer> blocks, KeptTranslations before) {
        passage = new ModelSource(source, starts);
        kept = new KeptTranslations.Taking(source, blocks, before, passage);
        unread = new UnreadWords(passage);
        quantities = new QuantityTranslator(passage);
        limits = new LimitTranslator(passage, quantities);
        vocabulary = new Vocabulary(passage);
        settings = new SettingTranslator(passage);
        pictures = new PictureReader(passage);
        frames = new FrameTranslator(this);
        outcomes = new OutcomeTranslator(this);
        steps = new StepTranslator(this, new FormulaTranslator(passage, quantities));
        showings = new ShowingTranslator(passage, quantities);
        declarations = new DeclarationTranslator(this, new InstrumentTranslator(passage, quantities, limits, vocabulary));
    }
}

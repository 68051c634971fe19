/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.HEAD_TEXT__WORDS;
import static org.faultwright.language.text.TextPackage.Literals.OUTCOME_TEXT__OTHERWISE;
import static org.faultwright.language.text.TextPackage.Literals.OUTCOME_TEXT__TARGET;
import static org.faultwright.language.text.TextPackage.Literals.OUTCOME_TEXT__TIMES;

import java.util.List;
import java.util.Optional;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.faultwright.language.text.HeadText;
import org.faultwright.language.text.OutcomeText;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Results and where they lead. */
final class OutcomeTranslator {
    private final Translators parts;

    OutcomeTranslator(Translators parts) {
        this.parts = parts;
    }

    /** @param codes whether plain words are codes of an indicator */
    List<Outcome> all(List<OutcomeText> written, boolean codes) {
        return written.stream().flatMap(outcome -> outcome(outcome, codes).stream()).toList();
    }

    /** An outcome whose head could not be read is left out; that has been reported. */
    private Optional<Outcome> outcome(OutcomeText written, boolean codes) {
        Optional<Name> target = target(written);
        return head(written.getHead(), codes).map(head -> new Outcome(head, target, repeat(written),
                parts.settings.all(written.getProves()), written.isNormal(), parts.passage.range(written)));
    }

    /** The parser puts a name in at the line end where a target is missing. */
    private Optional<Name> target(OutcomeText written) {
        Optional<INode> node = parts.passage.node(written, OUTCOME_TEXT__TARGET);
        Optional<INode> missing = node.filter(name -> parts.passage.words(name).isBlank() && name.getLength() > 0);
        missing.ifPresent(name -> parts.passage.unreadable(new SourceRange(parts.passage.source(), parts.passage.range(name).offset(), 0),
                "Expected the name of the next step after \"->\"."));
        return missing.isPresent() ? Optional.empty() : node.map(parts.passage::name);
    }

    private Optional<Outcome.Head> head(HeadText written, boolean codes) {
        if (written == null) {
            return Optional.empty();
        }
        if (written.isAnythingElse()) {
            return Optional.of(new Outcome.AnythingElse(parts.passage.range(written)));
        }
        Optional<INode> words = parts.passage.node(written, HEAD_TEXT__WORDS);
        if (written.getLimit() == null) {
            return words.map(node -> result(node, codes));
        }
        if (words.isEmpty() && parts.limits.isBareNumber(written.getLimit())) {
            return Optional.of(new Outcome.Code(parts.passage.name(NodeModelUtils.findActualNodeFor(written.getLimit()))));
        }
        return parts.limits.limit(written.getLimit()).map(limit -> new Outcome.Band(words.map(parts.passage::name), limit));
    }

    private Outcome.Head result(INode node, boolean codes) {
        Name words = parts.passage.name(node);
        boolean code = parts.passage.source().content().startsWith("\"", words.at().offset()) || codes && !words.text().equals("none");
        return code ? new Outcome.Code(words) : new Outcome.Word(ResultWords.plain(words));
    }

    private Optional<Outcome.Repeat> repeat(OutcomeText written) {
        return parts.passage.node(written, OUTCOME_TEXT__TIMES).flatMap(node -> parts.quantities
                .whole(node, "The number of times").map(times -> new Outcome.Repeat(times.value(),
                        parts.passage.nameOrNone(written, OUTCOME_TEXT__OTHERWISE), repeatRange(written, node))));
    }

    /** From {@code at most} to the end of the name that it leads to otherwise. */
    private SourceRange repeatRange(OutcomeText written, INode times) {
        SourceRange number = parts.passage.range(times);
        int from = parts.passage.node(written, OUTCOME_TEXT__TARGET).map(parts.passage::range).map(SourceRange::end).orElse(number.offset());
        String between = parts.passage.source().content().substring(from, number.offset());
        int at = between.indexOf("at");
        int start = at < 0 ? number.offset() : from + at;
        int end = parts.passage.node(written, OUTCOME_TEXT__OTHERWISE).map(parts.passage::range).map(SourceRange::end).orElse(number.end());
        return new SourceRange(parts.passage.source(), start, end - start);
    }

    /** The one result of an act may be written {@code then}. */
    private static final class ResultWords {
        static Name plain(Name word) {
            return word.text().equals("then") ? new Name(Step.DONE, word.at()) : word;
        }
    }
}

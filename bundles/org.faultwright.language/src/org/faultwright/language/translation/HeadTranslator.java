/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.*;

import java.util.List;
import java.util.Optional;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.text.DecisionRuleText;
import org.faultwright.language.text.EquipmentText;
import org.faultwright.language.text.RevisionText;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.StatedDecisionRule;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;

/** The lines about the text itself: equipment, revision, decision rule. */
final class HeadTranslator {
    private final Translators parts;
    private final ModelSource passage;

    HeadTranslator(Translators parts) {
        this.parts = parts;
        this.passage = parts.passage;
    }

    Optional<Equipment> equipment(List<EquipmentText> written) {
        return passage.single(written, "The equipment").map(text -> new Equipment(
                passage.textOrNone(text, EQUIPMENT_TEXT__TITLE), protection(text), passage.texts(text, EQUIPMENT_TEXT__BOARDS),
                passage.range(text)));
    }

    private Optional<Written<ProtectionClass>> protection(EquipmentText written) {
        return passage.node(written, EQUIPMENT_TEXT__PROTECTION).flatMap(node -> {
            Optional<ProtectionClass> known = ProtectionClass.named(passage.words(node));
            if (known.isEmpty()) {
                passage.problem(passage.range(node), passage.words(node) + " is no protection class; write I, II or III.");
            }
            return known.map(one -> new Written<>(one, passage.range(node)));
        });
    }

    Optional<Revision> revision(List<RevisionText> written) {
        return passage.single(written, "The revision").map(this::revision);
    }

    private Revision revision(RevisionText written) {
        return new Revision(passage.node(written, REVISION_TEXT__NUMBER)
                .flatMap(node -> parts.quantities.whole(node, "The revision")).map(Written::value).orElse(1),
                passage.node(written, REVISION_TEXT__STATUS)
                        .flatMap(node -> parts.vocabulary.oneOf(Revision.Status.values(), node, "status of a revision"))
                        .orElse(Revision.Status.DRAFT),
                passage.node(written, REVISION_TEXT__BY).map(passage::words),
                parts.vocabulary.day(written, REVISION_TEXT__DATED).map(Written::value),
                passage.node(written, REVISION_TEXT__DIGEST).map(passage::words), passage.range(written));
    }

    Optional<Written<StatedDecisionRule>> decisionRule(List<DecisionRuleText> written) {
        return passage.single(written, "The rule for readings near a limit").flatMap(text -> rule(text)
                .map(rule -> new Written<>(rule, passage.range(text))));
    }

    private Optional<StatedDecisionRule> rule(DecisionRuleText written) {
        Optional<INode> word = passage.node(written, DECISION_RULE_TEXT__RULE);
        Optional<Exact> percent = passage.node(written, DECISION_RULE_TEXT__PERCENT).map(parts.quantities::number);
        String name = word.map(passage::words).orElse("");
        if (name.equals("risk") && percent.isPresent() && inRange(percent.get())) {
            return Optional.of(new StatedDecisionRule.ByRisk(percent.get()));
        }
        if (percent.isEmpty() && name.equals("simple")) {
            return Optional.of(new StatedDecisionRule.Simple());
        }
        if (percent.isEmpty() && name.equals("guarded")) {
            return Optional.of(new StatedDecisionRule.Guarded());
        }
        passage.problem(passage.range(written), "A rule for readings near a limit is simple, guarded or risk with a share above 0 %"
                + " and up to 50 %; write one of these, as in decision rule risk 2 %.");
        return Optional.empty();
    }

    private static boolean inRange(Exact percent) {
        return percent.signum() > 0 && percent.compareTo(Exact.of(50)) <= 0;
    }
}

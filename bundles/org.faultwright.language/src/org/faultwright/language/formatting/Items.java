/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.BidiTreeIterator;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;

/** Finds in a parsed text the places where a line or declaration begins. */
final class Items {
    private static final Set<String> DECLARATIONS = Set.of("LibraryText", "ProcedureText", "UsesText", "EquipmentText", "RevisionText", "ComplaintsText",
            "ToolsText", "ClosesText", "OtherwiseText", "DecisionRuleText", "AmbientText", "ConditionText", "SetUpText", "InstrumentText", "PointText", "PartText", "IndicatorText", "NoteText",
            "RoutineText", "FaultText", "ExampleText", "StepText", "BeginText");
    private static final Map<String, Item> RULES = Map.of("UncertaintyText", Item.LINE, "AdjustText", Item.LINE, "RowText", Item.LINE, "PictureText", Item.LINE, "VariationText", Item.LINE, "OutcomeText",
            Item.OUTCOME, "RangeText", Item.RANGE, "CodeText", Item.CODE);

    /** Keywords that begin a line of the declaration whose rule is given. */
    private static final Map<String, Set<String>> KEYWORDS = Map.of("MeasureText", Set.of("expects", "units"),
            "DoText", Set.of("erases", "repairs"), "CalculateText", Set.of("value", "expects"),
            "ConcludeText", Set.of("finds", "refers", "report"), "InstrumentText", Set.of("rated", "valid", "calibrated"),
            "FaultText", Set.of("cases", "shows", "remedy", "hazards", "report"), "RoutineText", Set.of("exits", "takes"),
            "ExampleText", Set.of("ends"), "NoteText", Set.of("covers", "hazard", "consequence", "avoid"));

    /** Rules for words that have no place; they only keep the rest of a broken text readable. */
    private static final Set<String> UNREAD = Set.of("UnreadWords", "StrayWord", "ProcedureWord");

    private final Map<Integer, Item> byOffset = new HashMap<>();
    private boolean whole = true;

    Items(ICompositeNode root) {
        BidiTreeIterator<INode> nodes = root.getAsTreeIterable().iterator();
        while (nodes.hasNext()) {
            INode node = nodes.next();
            whole &= !(node.getGrammarElement() instanceof RuleCall call) || !UNREAD.contains(call.getRule().getName());
            Item item = item(node);
            if (item != Item.NONE && node.getLength() > 0) {
                byOffset.merge(node.getOffset(), item, (first, second) -> first);
            }
        }
    }

    /** Whether every word has its place in the language. */
    boolean isWhole() {
        return whole;
    }

    Item at(int offset) {
        return byOffset.getOrDefault(offset, Item.NONE);
    }

    private static Item item(INode node) {
        if (node instanceof ILeafNode && node.getGrammarElement() instanceof Keyword keyword) {
            return isTimeAlone(node, keyword) ? Item.LINE : item(keyword);
        }
        if (node.getGrammarElement() instanceof Action action) {
            return owner(action).equals("FrameText") ? Item.LINE : Item.NONE;
        }
        if (!(node.getGrammarElement() instanceof RuleCall call)) {
            return Item.NONE;
        }
        String rule = call.getRule().getName();
        String owner = owner(call);
        if (DECLARATIONS.contains(rule) || owner.equals("StepText")) {
            return Item.DECLARATION;
        }
        if (rule.equals("LimitText") && owner.equals("HeadText")) {
            return Item.LIMIT;
        }
        boolean line = rule.equals("KindWords") && owner.equals("MeasureText")
                || rule.equals("SourceText") && owner.equals("IndicatorText")
                || rule.equals("ShowingText") && owner.equals("ExampleText");
        return line ? Item.LINE : RULES.getOrDefault(rule, Item.NONE);
    }

    /** The time of an example that does not say where it ends. */
    private static boolean isTimeAlone(INode node, Keyword keyword) {
        if (!keyword.getValue().equals("within") || !owner(keyword).equals("ExampleText")) {
            return false;
        }
        for (INode before = node.getPreviousSibling(); before != null; before = before.getPreviousSibling()) {
            if (before instanceof ILeafNode leaf && leaf.getText().equals("ends")) {
                return false;
            }
        }
        return true;
    }

    private static Item item(Keyword keyword) {
        String owner = owner(keyword);
        return KEYWORDS.getOrDefault(owner, Set.of()).contains(keyword.getValue()) ? Item.LINE : Item.NONE;
    }

    private static String owner(EObject grammarElement) {
        ParserRule rule = GrammarUtil.containingParserRule(grammarElement);
        return rule == null ? "" : rule.getName();
    }
}

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
final class ItemFinder {
    private static final Set<String> DECLARATIONS = Set.of("LibraryText", "ProcedureText", "UsesText", "EquipmentText", "RevisionText", "ComplaintsText",
            "ToolsText", "ClosesText", "OtherwiseText", "DecisionRuleText", "AmbientText", "ConditionText", "SetUpText", "InstrumentText", "PointText", "PartText", "IndicatorText", "NoteText",
            "RoutineText", "FaultText", "ExampleText", "StepText", "BeginText");
    private static final Map<String, LayoutItem> RULES = Map.of("UncertaintyText", LayoutItem.LINE, "AdjustText", LayoutItem.LINE, "RowText", LayoutItem.LINE, "PictureText", LayoutItem.LINE, "VariationText", LayoutItem.LINE, "OutcomeText",
            LayoutItem.OUTCOME, "RangeText", LayoutItem.RANGE, "CodeText", LayoutItem.CODE);

    /** Keywords that begin a line of the declaration whose rule is given. */
    private static final Map<String, Set<String>> KEYWORDS = Map.of("MeasureText", Set.of("expects", "units"),
            "DoText", Set.of("erases", "repairs"), "CalculateText", Set.of("value", "expects"),
            "ConcludeText", Set.of("finds", "refers", "report"), "InstrumentText", Set.of("rated", "valid", "calibrated"),
            "FaultText", Set.of("cases", "shows", "remedy", "hazards", "report"), "RoutineText", Set.of("exits", "takes"),
            "ExampleText", Set.of("ends"), "NoteText", Set.of("covers", "hazard", "consequence", "avoid"));

    /** Rules for words that have no place; they only keep the rest of a broken text readable. */
    private static final Set<String> UNREAD = Set.of("UnreadWords", "StrayWord", "ProcedureWord");

    private final Map<Integer, LayoutItem> byOffset = new HashMap<>();
    private boolean whole = true;

    ItemFinder(ICompositeNode root) {
        BidiTreeIterator<INode> nodes = root.getAsTreeIterable().iterator();
        while (nodes.hasNext()) {
            INode node = nodes.next();
            whole &= !(node.getGrammarElement() instanceof RuleCall call) || !UNREAD.contains(call.getRule().getName());
            LayoutItem item = item(node);
            if (item != LayoutItem.NONE && node.getLength() > 0) {
                byOffset.merge(node.getOffset(), item, (first, second) -> first);
            }
        }
    }

    /** Whether every word has its place in the language. */
    boolean isWhole() {
        return whole;
    }

    LayoutItem at(int offset) {
        return byOffset.getOrDefault(offset, LayoutItem.NONE);
    }

    private static LayoutItem item(INode node) {
        if (node instanceof ILeafNode && node.getGrammarElement() instanceof Keyword keyword) {
            return isTimeAlone(node, keyword) ? LayoutItem.LINE : item(keyword);
        }
        if (node.getGrammarElement() instanceof Action action) {
            return owner(action).equals("FrameText") ? LayoutItem.LINE : LayoutItem.NONE;
        }
        if (!(node.getGrammarElement() instanceof RuleCall call)) {
            return LayoutItem.NONE;
        }
        String rule = call.getRule().getName();
        String owner = owner(call);
        if (DECLARATIONS.contains(rule) || owner.equals("StepText")) {
            return LayoutItem.DECLARATION;
        }
        if (rule.equals("LimitText") && owner.equals("HeadText")) {
            return LayoutItem.LIMIT;
        }
        boolean line = rule.equals("KindWords") && owner.equals("MeasureText")
                || rule.equals("SourceText") && owner.equals("IndicatorText")
                || rule.equals("ShowingText") && owner.equals("ExampleText");
        return line ? LayoutItem.LINE : RULES.getOrDefault(rule, LayoutItem.NONE);
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

    private static LayoutItem item(Keyword keyword) {
        String owner = owner(keyword);
        return KEYWORDS.getOrDefault(owner, Set.of()).contains(keyword.getValue()) ? LayoutItem.LINE : LayoutItem.NONE;
    }

    private static String owner(EObject grammarElement) {
        ParserRule rule = GrammarUtil.containingParserRule(grammarElement);
        return rule == null ? "" : rule.getName();
    }
}

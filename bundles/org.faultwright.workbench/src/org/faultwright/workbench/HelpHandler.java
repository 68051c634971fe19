/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.Finding;
import org.faultwright.language.reference.LanguageReference;
import org.faultwright.language.reference.ReferenceEntry;
import org.faultwright.language.server.Keywords;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.chart.ChartView;
import org.faultwright.workbench.compare.CompareView;
import org.faultwright.workbench.faulttable.FaultTableView;
import org.faultwright.workbench.find.FindView;
import org.faultwright.workbench.findings.ChosenFinding;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.folders.ShelfView;
import org.faultwright.workbench.help.HelpTopics;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.outline.OutlineView;
import org.faultwright.workbench.usedby.UsedByView;
import org.faultwright.workbench.walk.WalkView;

/** Opens the help on what is in hand: the finding at the cursor or chosen, the word of the language at the cursor, the view. */
public final class HelpHandler extends AbstractHandler {
    private static final Pattern WORD = Pattern.compile("[a-z][a-z-]*");
    private static final Map<String, String> PAGES = Map.of(CardView.ID, "cards", ChartView.ID, "chart", WalkView.ID, "walk", FindView.ID, "find",
            FindingsView.ID, "findings", FaultTableView.ID, "fault-table", CompareView.ID, "compare", OutlineView.ID, "writing", UsedByView.ID, "writing",
            ShelfView.ID, "files");

    @Override
    public Object execute(ExecutionEvent event) {
        IWorkbenchPart part = HandlerUtil.getActivePart(event);
        if (part instanceof HelpView) {
            HelpView.showAgain();
        } else if (part instanceof ITextEditor) {
            ActiveText.get().place().ifPresentOrElse(HelpHandler::atTheCursor, () -> HelpView.showTopic(HelpTopics.FIRST));
        } else if (part instanceof FindingsView && ChosenFinding.get().finding().isPresent()) {
            HelpView.showRule(ChosenFinding.get().finding().get().rule());
        } else {
            HelpView.showTopic(part == null ? HelpTopics.FIRST : PAGES.getOrDefault(part.getSite().getId(), HelpTopics.FIRST));
        }
        return null;
    }

    private static void atTheCursor(ActiveText.Place place) {
        Optional<String> rule = place.live().text().findingsAt(place.offset()).stream().map(Finding::rule).findFirst();
        Optional<ReferenceEntry> entry = word(place).flatMap(word -> LanguageReference.about(word).stream().findFirst());
        if (rule.isPresent()) {
            HelpView.showRule(rule.get());
        } else if (entry.isPresent()) {
            HelpView.showEntry(entry.get());
        } else {
            HelpView.showTopic("writing");
        }
    }

    /** The word of the language that the cursor stands in or behind; absent in quoted texts and comments. */
    private static Optional<String> word(ActiveText.Place place) {
        String text = place.live().text().content();
        int offset = Math.min(place.offset(), text.length());
        int start = text.lastIndexOf('\n', offset - 1) + 1;
        int end = text.indexOf('\n', offset) < 0 ? text.length() : text.indexOf('\n', offset);
        String line = text.substring(start, end);
        Matcher word = WORD.matcher(line);
        while (word.find()) {
            String before = line.substring(0, word.start());
            boolean quoted = before.chars().filter(c -> c == '"').count() % 2 == 1 || before.contains("//");
            if (word.start() <= offset - start && offset - start <= word.end() && !quoted && Keywords.ALL.contains(word.group())) {
                return Optional.of(word.group());
            }
        }
        return Optional.empty();
    }
}

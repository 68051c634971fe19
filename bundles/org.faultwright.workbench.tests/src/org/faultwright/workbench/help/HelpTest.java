/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.TreeSet;
import org.eclipse.ui.PlatformUI;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.workbench.KeepPicture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The help in the window. */
@ExtendWith(KeepPicture.class)
class HelpTest {
    @Test
    void should_have_a_page_for_every_topic() {
        assertTrue(HelpTopics.ids().size() > 80, "the rules are among the topics");
        for (String id : HelpTopics.ids()) {
            assertTrue(HelpTopics.page(id).filter(page -> page.length() > 200).isPresent(), id);
        }
    }

    @Test
    void should_show_a_page_of_the_reference() {
        HelpView.showTopic("reference-clauses");

        HelpView view = (HelpView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(HelpView.ID);
        assertTrue(view.shownText().contains("needs CONDITION VALUE"), view.shownText());
    }

    @Test
    void should_show_the_page_of_a_rule() {
        HelpView.showRule("hole-between-bands");

        HelpView view = (HelpView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(HelpView.ID);
        assertTrue(view.shownText().startsWith(HelpView.ruleTitle("hole-between-bands")), view.shownText());
    }

    @Test
    void should_name_rules_by_their_titles_everywhere() {
        TreeSet<String> shown = new TreeSet<>();
        for (String id : HelpTopics.ids()) {
            // where a rule is named to a machine
            String page = HelpTopics.page(id).orElseThrow().replaceAll("--rule [a-z-]+", "");
            HelpTopics.rules().values().forEach(headers -> headers.stream().map(RuleHeader::id)
                    .filter(rule -> rule.contains("-") && page.matches("(?s).*(?<![\\w-])" + rule + "(?![\\w-]).*")).forEach(rule -> shown.add(rule + " in " + id)));
        }

        assertEquals(new TreeSet<>(), shown);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.List;
import java.util.Locale;
import org.faultwright.analysis.RuleHeader;

/**
 * What there is to read about one rule.
 *
 * @param header the rule in short
 * @param prose  why it matters and what to do, one paragraph each, in Markdown
 * @param bad    a text that shows the finding; a line {@code //   ^ id} under the words it is about
 * @param good   the same text as it should be
 */
public record RulePage(RuleHeader header, List<String> prose, String bad, String good) {

    /** The whole page as Markdown: the generated heading, then what was written by hand. */
    public String markdown() {
        StringBuilder page = new StringBuilder();
        page.append("# ").append(header.id()).append("\n\n");
        page.append(header.summary()).append("\n\n");
        page.append("*").append(header.group().title()).append(", ")
                .append(header.severity().name().toLowerCase(Locale.ROOT)).append("*\n\n");
        prose.forEach(paragraph -> page.append(paragraph).append("\n\n"));
        page.append("Instead of\n\n").append(fenced(bad)).append("\nwrite\n\n").append(fenced(good));
        return page.toString();
    }

    private static String fenced(String text) {
        return "```procedure\n" + text + "```\n";
    }
}

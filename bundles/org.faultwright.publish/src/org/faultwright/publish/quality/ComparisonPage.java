/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Map;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Published;
import org.faultwright.publish.page.ColumnLabels;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.StyleSheet;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.since.SinceRelease;

/** Two revisions side by side, for a browser. */
public final class ComparisonPage {
    private ComparisonPage() {
    }

    /** @param compared by the names of the procedures */
    public static Published of(Map<String, SinceRelease> compared, List<String> fresh, List<String> gone) {
        Page page = new Page(Medium.SCREEN, "Comparison of two revisions", "What two revisions of procedures say differently");
        Tag main = page.body().add("main", "quality");
        main.say("p", "what", "Comparison");
        main.say("h1", "", compared.size() == 1 ? compared.keySet().iterator().next() : "Two revisions compared");
        compared.forEach((name, since) -> {
            main.say("h2", "", name);
            main.say("p", "", "Compared with " + SinceRelease.record(since.earlier()) + ". " + since.inShort());
            ChangesPart.table(main, since);
        });
        names(main, "New", fresh);
        names(main, "Gone", gone);
        main.add("p", "caution small").text(Caution.SENTENCES);
        ColumnLabels.add(page);
        return new Published("comparison.html", "text/html", HtmlText.of(page, StyleSheet.of("page", "screen", "list", "quality")));
    }

    private static void names(Tag main, String title, List<String> names) {
        if (!names.isEmpty()) {
            main.say("h2", "", title);
            main.say("p", "", String.join(", ", names));
        }
    }
}

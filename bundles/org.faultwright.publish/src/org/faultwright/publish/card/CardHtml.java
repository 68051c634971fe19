/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.StyleSheet;
import org.faultwright.publish.plan.CardPlan;

/** The bench card for a browser: one file that runs nothing and fetches nothing. */
public final class CardHtml implements ProcedureExport {
    @Override
    public String name() {
        return "card-html";
    }

    @Override
    public String title() {
        return "Bench card, HTML";
    }

    @Override
    public PublishedFiles publish(Publication publication) {
        byte[] html = HtmlText.of(BenchCard.page(TypesetPlan.of(publication)), StyleSheet.of("page", "screen"));
        return new PublishedFiles(FileName.of(publication.procedure(), ".html"), "text/html", html);
    }
}

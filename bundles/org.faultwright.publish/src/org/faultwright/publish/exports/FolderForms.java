/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.exports;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.faultwright.publish.Export;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.index.IndexHtml;
import org.faultwright.publish.quality.ComparisonPage;

/** What is made of procedures together, however many they are: the command line and the window both ask here. */
public final class FolderForms {
    private FolderForms() {
    }

    /**
     * The forms among those wanted that are made of a whole folder. Where a release is known, the page that tells what changed since then
     * stands before the index, which leads to it.
     *
     * @param folder its files are those that stand there already; each page may lead to them and to the pages before it
     * @param named  gives a page the name that it is written under
     */
    public static List<PublishedFiles> of(ProcedureFolder folder, List<Export> wanted, UnaryOperator<PublishedFiles> named) {
        List<PublishedFiles> made = new ArrayList<>();
        Set<String> there = new TreeSet<>(folder.files());
        for (Export export : wanted) {
            if (export instanceof IndexHtml) {
                ComparisonPage.since(folder).map(named).ifPresent(page -> add(page, made, there));
            }
            if (export instanceof FolderExport whole) {
                add(named.apply(whole.publish(folder.with(there))), made, there);
            }
        }
        return made;
    }

    private static void add(PublishedFiles page, List<PublishedFiles> made, Set<String> there) {
        made.add(page);
        there.add(page.fileName());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.exports;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.Export;
import org.faultwright.publish.FileName;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.LibraryExport;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;

/** Makes every kind of export of one procedure alone. */
public final class AloneExport {
    private final Publication publication;
    private final Optional<EarlierRelease> since;
    private final Set<String> files = new HashSet<>();

    /** @param since the last release, where one is known; of it only the earlier text of this procedure counts */
    public AloneExport(Publication publication, Optional<EarlierRelease> since) {
        this.publication = publication;
        this.since = since.map(release -> release.only(List.of(publication.procedure())));
    }

    /**
     * The files of one export: of a library one for each that the procedure uses, none where it uses none. Asked for those of a folder last, they link to the others. Beside an index
     * stands what changed since the last release, where one is known.
     */
    public List<PublishedFiles> of(Export export) {
        List<PublishedFiles> made = new ArrayList<>();
        if (export instanceof ProcedureExport each) {
            made.add(each.publish(publication));
        } else if (export instanceof LibraryExport each) {
            publication.procedure().libraries().forEach(library -> made.add(each.publish(library)));
        } else if (export instanceof FolderExport whole) {
            made.addAll(FolderForms.of(new ProcedureFolder(publication.procedure().title(), List.of(publication), Set.copyOf(files), List.of(), since, Optional.empty(),
                    ProcedureFolder.FIVE_YEARS), List.of(whole), this::underItsOwnName));
        }
        made.forEach(one -> files.add(one.fileName()));
        return made;
    }

    /** So that a page about one procedure does not take the place of one about a whole folder. */
    private PublishedFiles underItsOwnName(PublishedFiles page) {
        return page.fileName().startsWith(FileName.of(publication.procedure(), ".")) ? page : new PublishedFiles(FileName.of(publication.procedure(), "." + page.fileName()), page.mediaType(), page.bytes());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.function.Function;

/** An export of a folder of procedures. The same folder gives the same bytes, on any day and any machine. */
public non-sealed interface FolderExport extends Export {
    PublishedFiles publish(ProcedureFolder folder);

    /** One that is written by a function. @param name lower case with hyphens @param title for a menu or listing */
    static FolderExport of(String name, String title, Function<ProcedureFolder, PublishedFiles> publish) {
        return new FolderExport() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public String title() {
                return title;
            }

            @Override
            public PublishedFiles publish(ProcedureFolder folder) {
                return publish.apply(folder);
            }
        };
    }
}

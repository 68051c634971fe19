/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.function.Function;

/** An export of one procedure. The same publication gives the same bytes, on any day and any machine. */
public non-sealed interface ProcedureExport extends Export {
    PublishedFiles publish(Publication publication);

    /** One that is written by a function. @param name lower case with hyphens @param title for a menu or listing */
    static ProcedureExport of(String name, String title, Function<Publication, PublishedFiles> publish) {
        return new ProcedureExport() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public String title() {
                return title;
            }

            @Override
            public PublishedFiles publish(Publication publication) {
                return publish.apply(publication);
            }
        };
    }
}

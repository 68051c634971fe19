/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.function.Function;
import org.faultwright.procedure.Library;

/** An export of each library that the published procedures use. The same library gives the same bytes. */
public non-sealed interface LibraryExport extends Export {
    PublishedFiles publish(Library library);

    /** One that is written by a function. @param name lower case with hyphens @param title for a menu or listing */
    static LibraryExport of(String name, String title, Function<Library, PublishedFiles> publish) {
        return new LibraryExport() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public String title() {
                return title;
            }

            @Override
            public PublishedFiles publish(Library library) {
                return publish.apply(library);
            }
        };
    }
}

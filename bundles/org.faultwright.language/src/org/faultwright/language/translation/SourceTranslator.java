/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.SOURCE_TEXT__DATED;
import static org.faultwright.language.text.TextPackage.Literals.SOURCE_TEXT__DOCUMENT;

import java.util.Optional;
import org.faultwright.language.text.SourceText;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Written;

/** The documents that limits and codes come from. */
final class SourceTranslator {
    private SourceTranslator() {
    }

    static Optional<Source> source(Translators parts, SourceText written) {
        return Optional.ofNullable(written).map(text -> new Source(parts.passage.textOrNone(text, SOURCE_TEXT__DOCUMENT),
                parts.vocabulary.day(text, SOURCE_TEXT__DATED).map(Written::value), parts.passage.range(text)));
    }
}

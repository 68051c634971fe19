/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Quantity;

/**
 * A case with its readings and the conclusion it must reach.
 *
 * @param variation whether its words stand in another example, from which it differs in what they say
 * @param of     the fault it is a case of, where stated
 * @param shows  what each step shows; a step that comes round again takes its next entry
 * @param within the time it may take
 */
public record Example(boolean variation, Name title, Optional<Name> of, List<Showing> shows, Optional<Name> endsAt,
        Optional<Written<Quantity>> within, SourceRange at) {
    /** What it says in its own words; the rest follows from the example around it or from the fault table. */
    public List<Showing> written() {
        return Showing.written(shows);
    }

    /** The end that stands in its words. */
    public Optional<Name> writtenEnd() {
        return endsAt.filter(end -> !end.isUnderstood());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/**
 * A safety note.
 *
 * @param covers      the hazards it is about
 * @param hazard      what can happen
 * @param consequence what comes of it
 * @param avoid       how to avoid it
 */
public record Note(Name name, SignalWord word, List<Written<Hazard>> covers, String hazard, String consequence,
        String avoid, SourceRange at) implements Declaration {
    @Override
    public String title() {
        return hazard;
    }
}

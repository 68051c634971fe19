/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/**
 * Conditions at their values under one name: {@code setup dead { Cover removed, Charge absent }}. A step that says {@code unit dead} needs them all.
 */
public record NamedSetUp(Name name, String title, List<Setting> settings, SourceRange at) implements Declaration {
    /** What a step needs that asks for this set-up there. The conditions and values have a place of no length, for they are not written in the step. */
    public List<Setting> neededAt(SourceRange place) {
        SourceRange none = new SourceRange(place.source(), place.end(), 0);
        return settings.stream().map(one -> new Setting(new Name(one.condition().text(), none), new Name(one.value().text(), none), place)).toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.List;
import org.faultwright.procedure.SourceRange;

/**
 * What a rule has to say about one place.
 *
 * @param rule     the rule's id
 * @param at       the words it is about
 * @param message  what is wrong, one sentence
 * @param advice   what to do, one sentence
 * @param path     the shortest way that proves it; empty where numbers in the message do
 * @param fixes    changes of the text that would remove it
 */
public record Finding(String rule, Severity severity, SourceRange at, String message, String advice,
        List<PathStep> path, List<Fix> fixes) {
    /** The same with other fixes. */
    public Finding withFixes(List<Fix> others) {
        return new Finding(rule, severity, at, message, advice, path, List.copyOf(others));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.ThingKind;

/**
 * One line of the outline.
 *
 * @param kind    what it is
 * @param keyword the word of the language that it begins with; of a step, which kind it is
 * @param label   its name
 * @param detail  its title or what else helps to recognise it
 * @param at      the whole part
 * @param nameAt  where the cursor goes
 */
public record OutlineItem(ThingKind kind, String keyword, String label, String detail, SourceRange at, SourceRange nameAt,
        List<OutlineItem> children) {
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import org.eclipse.xtext.ParserRule;
import org.faultwright.procedure.ThingKind;

/**
 * What the grammar says of the beginning of one kind of block.
 *
 * @param keyword the word it begins with
 * @param rule    the rule that reads it
 * @param feature where a document keeps it
 * @param follows what stands behind the keyword
 * @param braced  whether its body stands in braces
 * @param tailed  whether more may follow behind the braces
 * @param holdsSteps whether steps stand within its braces
 * @param isStep  whether it is a step
 */
record BlockHead(String keyword, ParserRule rule, String feature, Follows follows, boolean braced, boolean tailed,
        boolean holdsSteps, boolean isStep) {
    ThingKind kind() {
        return isStep ? ThingKind.STEP : ThingKind.begunBy(keyword);
    }

    /** What stands behind the keyword. */
    enum Follows {
        NAME, TITLE, OTHER
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.io.IOException;
import java.util.Optional;
import org.faultwright.publish.Publication;
import org.faultwright.publish.plan.CardPlan;

/**
 * The card of a text that is being written. To find out where its steps stand best takes as long as to print them, so while the
 * text has the same steps they stay where they stood; in a pause they can be put where they will be published.
 */
public final class CardInHand {
    private Optional<CardPlan> shown = Optional.empty();

    /** On A4, with the steps where they stood the last time, as far as the text has the same. The caller closes them. */
    public synchronized CardPages of(Publication publication) throws IOException {
        Optional<CardPlan> kept = shown.flatMap(before -> CardPlan.kept(before, publication));
        shown = kept.or(() -> Optional.of(TypesetPlan.of(publication)));
        return kept.isPresent() ? TypesetPlan.looked(kept.get()) : TypesetPlan.looked(publication);
    }

    /** The pages as they are published; absent where they were so the last time. @param publication of which the last pages were made */
    public synchronized Optional<CardPages> settled(Publication publication) throws IOException {
        CardPlan plan = TypesetPlan.of(publication);
        if (shown.filter(plan::isLike).isPresent()) {
            return Optional.empty();
        }
        shown = Optional.of(plan);
        return Optional.of(TypesetPlan.looked(publication));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/**
 * What every kind of step can say.
 *
 * @param needs    conditions that must hold before it
 * @param setUps   the set-ups that the unit must be in before it; their conditions are among those it needs
 * @param sets     conditions it sets, whatever its outcome
 * @param notes    notes to be read before it
 * @param handles  parts it touches
 * @param takes    how long it takes a practised technician
 * @param tools    hand tools and aids it needs
 * @param hazards  hazards of the step itself
 * @param confirms where it says that it confirms the complaint
 * @param verifies where it says that it verifies the repair
 * @param source   where its instruction or limit comes from
 * @param hint     a further sentence for a trainee
 * @param waits    how long it waits for something to warm, cool, drain or settle
 * @param pictures what it looks like
 * @param precautions what it says of its own safety
 */
public record StepFrame(List<Setting> needs, List<Name> setUps, List<Setting> sets, List<Name> notes, List<Name> handles,
        Optional<Written<Quantity>> takes, List<Written<String>> tools, List<Written<Hazard>> hazards,
        Optional<SourceRange> confirms, Optional<SourceRange> verifies, Optional<Source> source,
        Optional<Written<String>> hint, Optional<Written<Quantity>> waits, List<Picture> pictures,
        Precautions precautions) {
    public static final StepFrame PLAIN = new StepFrame(List.of(), List.of(), List.of(), List.of(), List.of(), Optional.empty(),
            List.of(), List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(), Precautions.NONE);

    /** As it is written: without what the set-ups ask for. */
    public List<Setting> writtenNeeds() {
        return needs.stream().filter(need -> !need.condition().isUnderstood()).toList();
    }

    public StepFrame needing(List<Setting> otherNeeds) {
        return new StepFrame(otherNeeds, setUps, sets, notes, handles, takes, tools, hazards, confirms, verifies, source, hint, waits, pictures, precautions);
    }

    public StepFrame taking(Written<Quantity> time) {
        return new StepFrame(needs, setUps, sets, notes, handles, Optional.of(time), tools, hazards, confirms, verifies, source, hint, waits, pictures, precautions);
    }

    /** How long the step takes: as it says, and not less than it waits. Absent where it says neither. */
    public Optional<Written<Quantity>> time() {
        return takes.isEmpty() ? waits : takes.map(stated -> waits.filter(wait -> isLonger(wait.value(), stated.value())).orElse(stated));
    }

    private static boolean isLonger(Quantity wait, Quantity takes) {
        return wait.fits(QuantityKind.TIME) && takes.fits(QuantityKind.TIME) && wait.base().compareTo(takes.base()) > 0;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Quantity;

/**
 * What a step says of its own safety.
 *
 * @param liveBecause why the step is done on a live circuit on purpose
 * @param tries       the instruments that are tried on a known source
 * @param tests       the protective tests that the step is
 * @param rated       the tools whose rating for live work is stated
 */
public record Precautions(Optional<Written<String>> liveBecause, List<Name> tries, List<Written<ProtectiveTest>> tests,
        List<RatedTool> rated) {
    public static final Precautions NONE = new Precautions(Optional.empty(), List.of(), List.of(), List.of());

    /** A tool made for live work, as IEC 60900 asks for up to 1000 V ac or 1500 V dc. @param upTo the voltage it is rated for */
    public record RatedTool(Written<String> tool, Written<Quantity> upTo) {
    }
}

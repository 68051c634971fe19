/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.quantity.Exact;

/**
 * What one step can show when one fault is there.
 *
 * @param shares the outcomes it can show, by key, each with its share from 0 to 1 where the author knows it
 */
public record FaultSignature(Map<String, Optional<Exact>> shares) {
    /** The table says nothing: any outcome may show. */
    public static final FaultSignature SILENT = new FaultSignature(Map.of());

    public FaultSignature {
        shares = Collections.unmodifiableMap(new LinkedHashMap<>(shares));
    }

    static FaultSignature certain(String outcome) {
        return new FaultSignature(Map.of(outcome, Optional.of(Exact.ONE)));
    }

    public boolean isSilent() {
        return shares.isEmpty();
    }

    public boolean isCertain() {
        return shares.size() == 1;
    }

    public Set<String> outcomes() {
        return shares.keySet();
    }

    public boolean canShow(String outcome) {
        return isSilent() || shares.containsKey(outcome);
    }

    /** Whether every share is known. */
    public boolean hasShares() {
        return !isSilent() && shares.values().stream().allMatch(Optional::isPresent);
    }

    /** Whether the step, asked once, is sure to tell the two faults apart. */
    public boolean excludes(FaultSignature other) {
        return !isSilent() && !other.isSilent() && shares.keySet().stream().noneMatch(other.shares::containsKey);
    }
}

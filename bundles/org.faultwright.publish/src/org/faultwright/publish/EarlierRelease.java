/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Procedure;

/** The procedures of the last release, by their names. */
public final class EarlierRelease {
    private final Map<String, Procedure> procedures = new LinkedHashMap<>();

    private EarlierRelease() {
    }

    /** @throws PublishingRefused with one sentence where two have one name */
    public static EarlierRelease of(List<Procedure> procedures) throws PublishingRefused {
        EarlierRelease release = new EarlierRelease();
        for (Procedure procedure : procedures) {
            Procedure other = release.procedures.putIfAbsent(procedure.name().text(), procedure);
            if (other != null) {
                throw new PublishingRefused(other.source().name() + " and " + procedure.source().name() + " are both texts of \""
                        + procedure.name() + "\": keep the one that was released.");
            }
        }
        return release;
    }

    public Optional<Procedure> of(String procedure) {
        return Optional.ofNullable(procedures.get(procedure));
    }

    public List<Procedure> procedures() {
        return List.copyOf(procedures.values());
    }
}

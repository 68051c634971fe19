/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.analysis.compare.MatchedProcedures;
import org.faultwright.procedure.Procedure;

/** The procedures of the last release, by their names. */
public final class EarlierRelease {
    private final Map<String, Procedure> procedures = new LinkedHashMap<>();

    private final String place;

    private EarlierRelease(String place) {
        this.place = place;
    }

    /** @throws PublishingRefused with one sentence where two have one name */
    public static EarlierRelease of(List<Procedure> procedures) throws PublishingRefused {
        return of(procedures, "");
    }

    /** @param place what a reader finds it by, such as the name of its folder; empty where nobody named it */
    public static EarlierRelease of(List<Procedure> procedures, String place) throws PublishingRefused {
        EarlierRelease release = new EarlierRelease(place);
        for (Procedure procedure : procedures) {
            Procedure other = release.procedures.putIfAbsent(procedure.name().text(), procedure);
            if (other != null) {
                throw new PublishingRefused(other.source().name() + " and " + procedure.source().name() + " are both texts of \""
                        + procedure.name() + "\": keep the one that was released.");
            }
        }
        return release;
    }

    public String place() {
        return place;
    }

    public List<Procedure> procedures() {
        return List.copyOf(procedures.values());
    }

    /** The same release with nothing in it but the earlier texts of these; with nothing at all where they are new since then. */
    public EarlierRelease only(List<Procedure> now) {
        EarlierRelease some = new EarlierRelease(place);
        MatchedProcedures matched = MatchedProcedures.of(procedures(), now);
        now.forEach(one -> matched.earlier(one).ifPresent(was -> some.procedures.put(was.name().text(), was)));
        return some;
    }
}

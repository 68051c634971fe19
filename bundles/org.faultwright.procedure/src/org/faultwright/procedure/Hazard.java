/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Arrays;
import java.util.Optional;

/** What can hurt a person, a part or the customer's data. */
public enum Hazard {
    SHOCK("shock", true), STORED_CHARGE("charge", true), HEAT("heat", true), BATTERY("battery", true),
    MOTION("motion", true), LIGHT("light", true), CHEMICAL("chemical", true), WEIGHT("weight", true),
    PRESSURE("pressure", true), STATIC("static", false), DATA_LOSS("data", false);

    private final String word;
    private final boolean hurtsPeople;

    Hazard(String word, boolean hurtsPeople) {
        this.word = word;
        this.hurtsPeople = hurtsPeople;
    }

    /** As written in a procedure. */
    public String word() {
        return word;
    }

    public boolean hurtsPeople() {
        return hurtsPeople;
    }

    public static Optional<Hazard> named(String word) {
        return Arrays.stream(values()).filter(hazard -> hazard.word.equals(word)).findFirst();
    }
}

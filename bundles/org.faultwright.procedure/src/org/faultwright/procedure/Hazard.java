/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Arrays;
import java.util.Optional;

/** What can hurt a person, a part or the customer's data. */
public enum Hazard {
    SHOCK("shock", "electric shock", true), STORED_CHARGE("charge", "stored charge", true), HEAT("heat", "hot parts", true), BATTERY("battery", "battery", true),
    MOTION("motion", "moving parts", true), LIGHT("light", "strong light", true), CHEMICAL("chemical", "chemicals", true), WEIGHT("weight", "heavy load", true),
    PRESSURE("pressure", "pressure", true), STATIC("static", "static charge damages parts", false), DATA_LOSS("data", "loss of data", false);

    private final String word;
    private final String inWords;
    private final boolean hurtsPeople;

    Hazard(String word, String inWords, boolean hurtsPeople) {
        this.word = word;
        this.inWords = inWords;
        this.hurtsPeople = hurtsPeople;
    }

    /** As written in a procedure. */
    public String word() {
        return word;
    }

    /** As a reader is told of it, such as {@code hot parts}. */
    public String inWords() {
        return inWords;
    }

    public boolean hurtsPeople() {
        return hurtsPeople;
    }

    public static Optional<Hazard> named(String word) {
        return Arrays.stream(values()).filter(hazard -> hazard.word.equals(word)).findFirst();
    }
}

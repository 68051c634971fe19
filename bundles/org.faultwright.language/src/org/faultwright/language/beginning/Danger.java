/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

/**
 * What can hurt somebody or something, with the words that a note about it begins with. They remind, and are to be written over by
 * somebody who is trained for it; local codes and the maker's instructions come first.
 */
public enum Danger {
    SHOCK("shock", "danger", "Dangerous voltage inside", "MainsShock", "There is dangerous voltage inside while the plug is in.",
            "Electric shock kills or burns.", "Trained people only. Pull the plug before the cover comes off; lay it in sight."),
    CHARGE("charge", "danger", "Charge that stays after switching off", "StoredCharge", "Capacitors stay charged after the plug is pulled.",
            "Electric shock or burns.", "Wait, then prove less than 5 V with a meter that was tried. Touch nothing before."),
    MOTION("motion", "caution", "Something that moves", "MovingParts", "Parts start to move without warning.", "Drawn-in or cut fingers.",
            "Keep fingers, hair and probes away while it is switched on."),
    HEAT("heat", "caution", "Something hot", "HotParts", "Parts stay hot for minutes after switching off.", "Burned fingers.",
            "Let it cool, or wear heat gloves."),
    BATTERY("battery", "warning", "A battery that can burn", "BatteryFire", "The battery can burn when it is shorted, pierced or crushed.",
            "Fire and harmful smoke.", "Insulated tools, one pole at a time. Never charge a swollen one."),
    LIGHT("light", "caution", "Light that dazzles or burns", "StrongLight", "The light hurts eyes at this distance.", "Hurt eyes.",
            "Do not look into it; cover it or turn it away."),
    CHEMICAL("chemical", "caution", "Something that burns or poisons", "Chemicals", "What leaks or is used here is harmful.", "Hurt skin, eyes or lungs.",
            "Gloves and goggles on, window open."),
    WEIGHT("weight", "caution", "Something heavy", "HeavyUnit", "The unit is too heavy for one person.", "Crushed fingers, a hurt back.",
            "Two people, or a lifting table."),
    PRESSURE("pressure", "warning", "Something under pressure", "StoredPressure", "There is pressure inside after switching off.", "Parts that fly, burns by steam.",
            "Let the pressure off and see that it is gone."),
    STATIC("static", "notice", "Boards that static damages", "StaticDamage", "Boards are damaged by charge from fingers and clothes.",
            "A part that fails next month.", "Wear a wrist strap that was tried; keep boards on the mat."),
    DATA("data", "notice", "The customer's data", "DataLoss", "The repair can erase what the customer has stored.", "The customer's data are gone.",
            "Save them first, or have consent on the job slip.");

    private final String hazard;
    private final String signalWord;
    private final String title;
    private final String noteName;
    private final String what;
    private final String consequence;
    private final String avoid;

    Danger(String hazard, String signalWord, String title, String noteName, String what, String consequence, String avoid) {
        this.hazard = hazard;
        this.signalWord = signalWord;
        this.title = title;
        this.noteName = noteName;
        this.what = what;
        this.consequence = consequence;
        this.avoid = avoid;
    }

    /** In a few words. */
    public String title() {
        return title;
    }

    /** What is dangerous, as the note begins. */
    public String what() {
        return what;
    }

    /** What to do so that nothing happens, as the note begins. */
    public String avoid() {
        return avoid;
    }

    String hazard() {
        return hazard;
    }

    String noteName() {
        return noteName;
    }

    String note(String what, String avoid) {
        return "note " + noteName + " " + signalWord + " {\n    covers " + hazard + (this == CHARGE ? ", shock" : "") + "\n    hazard " + NamesFromWords.quoted(what)
                + "\n    consequence " + NamesFromWords.quoted(consequence) + "\n    avoid " + NamesFromWords.quoted(avoid) + "\n}\n";
    }
}

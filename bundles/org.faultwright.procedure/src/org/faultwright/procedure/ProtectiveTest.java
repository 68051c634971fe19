/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Locale;

/** What is tested on a mains unit after a repair (EN 50678). */
public enum ProtectiveTest {
    /** The resistance of the protective conductor. */
    CONDUCTOR("the protective conductor"),
    /** The insulation resistance. */
    INSULATION("the insulation"),
    /** The protective conductor current or the touch current. */
    LEAKAGE("the leakage current");

    private final String spoken;

    ProtectiveTest(String spoken) {
        this.spoken = spoken;
    }

    /** As written in a procedure. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** As spoken of in a sentence. */
    public String spoken() {
        return spoken;
    }
}

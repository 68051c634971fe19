/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/**
 * The signal words of ANSI Z535.6 and ISO 3864-2. Danger, warning and caution are about people; notice
 * is about things and data.
 */
public enum SignalWord {
    DANGER, WARNING, CAUTION, NOTICE;

    public boolean isAboutPeople() {
        return this != NOTICE;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

/** The name of a temperature sensor: {@code K} where {@code type K} is written. */
final class SensorName {
    private SensorName() {
    }

    static String of(String words) {
        return words.startsWith("type ") ? words.substring("type ".length()) : words;
    }
}

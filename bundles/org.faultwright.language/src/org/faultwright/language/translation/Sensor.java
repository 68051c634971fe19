/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import org.eclipse.xtext.nodemodel.INode;

/** The name of a temperature sensor: {@code K} where {@code type K} is written. */
final class Sensor {
    private Sensor() {
    }

    static String named(INode node) {
        String words = Passage.words(node);
        return words.startsWith("type ") ? words.substring("type ".length()) : words;
    }
}

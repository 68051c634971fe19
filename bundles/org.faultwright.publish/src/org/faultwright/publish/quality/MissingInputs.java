/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a report cannot say because nobody asked it to, and how to ask. */
final class MissingInputs {
    static final String AS_OF = "No day was given, so calibration and the age of sources were not looked at: publish with \u201C--as-of 2026-05-01\u201D or another day.";
    static final String SINCE = "No earlier release was named, so what changed was not looked at: publish with \u201C--since\u201D and its folder.";

    private MissingInputs() {
    }

    /** All of it; empty where everything was asked. */
    static String of(QualityReport report) {
        return Stream.of(report.asOf().isEmpty() ? AS_OF : "", report.since().isEmpty() ? SINCE : "").filter(words -> !words.isEmpty()).collect(Collectors.joining(" "));
    }
}

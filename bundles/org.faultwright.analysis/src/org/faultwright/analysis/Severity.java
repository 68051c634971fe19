/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.Collection;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How much a finding weighs. Errors keep a procedure from being printed as anything but a draft. */
public enum Severity {
    ERROR("error", "errors"), WARNING("warning", "warnings"), ADVICE("piece of advice", "pieces of advice");

    private final String one;
    private final String many;

    Severity(String one, String many) {
        this.one = one;
        this.many = many;
    }

    /** How many findings there are of each weight: "1 error, 0 warnings, 2 pieces of advice". */
    public static String counted(Collection<Finding> findings) {
        return Stream.of(values()).map(weight -> weight.counted(
                findings.stream().filter(finding -> finding.severity() == weight).count())).collect(Collectors.joining(", "));
    }

    private String counted(long number) {
        return number + " " + (number == 1 ? one : many);
    }
}

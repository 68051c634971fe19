/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Arrays;
import java.util.Optional;

/** How a unit protects against shock (IEC 61140): with a protective conductor, with double insulation, or by extra-low voltage. */
public enum ProtectionClass {
    I, II, III;

    public static Optional<ProtectionClass> named(String word) {
        return Arrays.stream(values()).filter(one -> one.name().equals(word)).findFirst();
    }
}

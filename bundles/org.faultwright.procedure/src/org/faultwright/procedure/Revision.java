/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.time.LocalDate;
import java.util.Optional;

/**
 * @param number 1 or more
 * @param by     who reviewed or released it
 * @param digest of what was released, as {@link ContentDigest} computes it
 */
public record Revision(int number, Status status, Optional<String> by, Optional<LocalDate> dated,
        Optional<String> digest, SourceRange at) {
    /** How far the text has come. */
    public enum Status { DRAFT, REVIEWED, RELEASED }
}

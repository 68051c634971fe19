/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.time.LocalDate;
import java.util.Optional;

/** The document, page and date a limit, code or claim comes from. */
public record Source(String document, Optional<LocalDate> dated, SourceRange at) {
}

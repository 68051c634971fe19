/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/** A part that is taken out, fitted or swapped. */
public record Part(Name name, String title, List<Written<Hazard>> hazards, SourceRange at) implements Declaration {
}

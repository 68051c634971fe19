/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.ThingKind;

/**
 * A name at one place, and where else it stands.
 *
 * @param name     as it stands there
 * @param kind     what it names
 * @param declared where it is declared, perhaps in a library; absent when it is unknown
 * @param uses     every place in this text that names the same thing, its declaration included
 */
public record NameInText(Name name, ThingKind kind, Optional<Name> declared, List<SourceRange> uses) {
}

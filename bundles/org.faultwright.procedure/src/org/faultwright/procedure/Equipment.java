/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;

/** What the procedure is for. @param protection its protection class, where stated @param boards the board revisions it holds for; empty means all */
public record Equipment(String title, Optional<Written<ProtectionClass>> protection, List<Written<String>> boards, SourceRange at) {
}

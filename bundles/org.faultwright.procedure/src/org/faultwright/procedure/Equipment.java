/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/** What the procedure is for. @param boards the board revisions it holds for; empty means all */
public record Equipment(String title, List<Written<String>> boards, SourceRange at) {
}

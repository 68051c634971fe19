/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/**
 * That no supply and no stored charge reach a point or a part: it is out of the circuit, as a drawn fuse is, or on the
 * far side of a plug. What a point stores itself it keeps all the same.
 *
 * @param when what must hold for that; empty means always
 */
public record Isolation(List<Setting> when, SourceRange at) {
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Limit;

/**
 * Where a charge is proved absent.
 *
 * @param points the points that carry this charge; reading any one of them proves it
 * @param limit  the voltage that counts as none, where the house asks for less than the standard
 */
public record Proof(List<Name> points, Optional<Written<Limit>> limit, SourceRange at) {
}

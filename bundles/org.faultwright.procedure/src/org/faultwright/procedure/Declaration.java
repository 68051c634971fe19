/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/** Something that has a name of its own and can be referred to. */
public interface Declaration {
    Name name();

    String title();

    /** The whole declaration. */
    SourceRange at();
}

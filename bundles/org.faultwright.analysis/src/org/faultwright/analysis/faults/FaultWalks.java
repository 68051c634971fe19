/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Procedure;

/** The walks of all faults through one tree. */
public final class FaultWalks {
    private final Tree tree;
    private final FaultTable table;
    private final List<FaultWalk> walks;

    private FaultWalks(Procedure procedure, FaultTable table) {
        this.tree = new Tree(procedure);
        this.table = table;
        this.walks = table.faults().stream().map(fault -> new FaultWalk(tree, table, fault)).toList();
    }

    /** The walks in a subject that is a procedure, computed once. */
    public static Optional<FaultWalks> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(FaultWalks.class,
                s -> new FaultWalks(procedure, FaultTable.in(s).orElseThrow())));
    }

    public static FaultWalks of(Procedure procedure) {
        return in(new Subject(procedure, Optional.empty())).orElseThrow();
    }

    public FaultTable table() {
        return table;
    }

    /** One for each fault, in the order of the table. */
    public List<FaultWalk> all() {
        return walks;
    }

    public Tree tree() {
        return tree;
    }
}

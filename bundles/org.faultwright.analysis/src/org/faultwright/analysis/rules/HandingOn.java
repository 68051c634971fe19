/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** Where a new step leads when it does not go well: a conclusion that refers the unit on, an old or a new one. */
final class HandingOn {
    private final StepInsertion insertion;
    private final Optional<Name> known;
    private Optional<String> written = Optional.empty();

    HandingOn(Procedure procedure, StepInsertion insertion) {
        this.insertion = insertion;
        this.known = procedure.steps().stream().filter(step -> step instanceof Step.Conclude conclude
                && conclude.refersTo().isPresent()).map(Step::name).findFirst();
    }

    String target() {
        if (known.isPresent()) {
            return known.get().text();
        }
        if (written.isEmpty()) {
            written = Optional.of(insertion.freeName("HandedOn"));
        }
        return written.get();
    }

    /** The new conclusion, if one was asked for and there was none. */
    List<String> lines() {
        return written.map(name -> List.of("",
                "conclude " + name + " \"Not finished here\" {",
                "    refers to \"the senior technician\"",
                "}")).orElse(List.of());
    }
}

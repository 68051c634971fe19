/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.examples.WalkedExample;
import org.faultwright.language.server.EditingServices;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Step;
import org.faultwright.publish.page.PlainText;

/**
 * A walk to be kept as an example, tried by a full check of the changed text.
 *
 * @param name    of the example
 * @param fix     what is to be written; absent where it is refused
 * @param refused why, in a sentence
 */
record KeptExample(String name, Optional<Fix> fix, Optional<String> refused) {
    private static final int LONGEST_TITLE = 100;

    /** This takes two full checks: not for the window's thread. @param stand at a conclusion @param title as it was typed */
    static KeptExample of(WalkState stand, String title, EditingServices services) {
        String name = PlainText.line(title).strip();
        if (name.isEmpty()) {
            return no("An example needs a name: type one.");
        }
        if (name.length() > LONGEST_TITLE) {
            return no("This name is longer than " + LONGEST_TITLE + " characters: shorten it.");
        }
        if (stand.procedure().examples().stream().map(Example::title).anyMatch(taken -> taken.text().equals(name))) {
            return no("There is an example \u201c" + name + "\u201d already: type another name.");
        }
        if (stand.walk().isLost() || !(stand.walk().step() instanceof Step.Conclude end)) {
            return no("Only a walk to a conclusion can be kept.");
        }
        Fix fix = WalkedExample.of(stand.procedure(), name, stand.results(), end);
        Stream<Finding> errors = services.added(fix).stream().filter(finding -> finding.severity() == Severity.ERROR);
        return errors.findFirst().map(error -> no("The example is not written, because it would bring an error: " + error.message()))
                .orElseGet(() -> new KeptExample(name, Optional.of(fix), Optional.empty()));
    }

    private static KeptExample no(String sentence) {
        return new KeptExample("", Optional.empty(), Optional.of(sentence));
    }
}

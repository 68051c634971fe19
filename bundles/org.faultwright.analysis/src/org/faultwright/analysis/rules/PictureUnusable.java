/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.PictureFile;

/** A picture that no card can show. */
public final class PictureUnusable implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("picture-unusable", Severity.ERROR, Group.RECORD,
            "A picture is missing, too large, or none.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        Picture.in(subject.document()).forEach(picture -> check(picture, findings));
    }

    private static void check(Picture picture, Findings findings) {
        PictureFile.of(picture).problem().ifPresent(problem -> {
            String[] saysAndDo = problem.split("; ", 2);
            findings.report(picture.file().at(), "The picture \"" + picture.file().value() + "\" " + saysAndDo[0] + ".",
                    Character.toUpperCase(saysAndDo[1].charAt(0)) + saysAndDo[1].substring(1) + ".");
        });
        if (picture.shows().isBlank()) {
            findings.report(picture.file().at(), "The picture \"" + picture.file().value() + "\" does not say what it shows.",
                    "Add: shows \"what is to be seen\". Whoever cannot see the picture reads or hears these words.");
        }
    }
}

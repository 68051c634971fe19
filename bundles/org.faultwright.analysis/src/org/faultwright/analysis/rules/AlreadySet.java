/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** An act that sets a condition to what it is already. */
public final class AlreadySet implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("already-set", Severity.ADVICE, Group.STATE,
            "A step sets a condition to the value that it has on every path to it.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> paths.map().places().stream()
                // a routine is written for callers who come with either value
                .filter(place -> place.caller().isEmpty() && place.step() instanceof Step.Do)
                .forEach(place -> place.sets().forEach(setting -> check(paths, place, setting, findings))));
    }

    private static void check(ProcedurePaths paths, InlinedStep place, Setting setting, Findings findings) {
        paths.map().scope().condition(setting.condition()).flatMap(paths::states)
                .filter(states -> states.isComplete()).ifPresent(states -> {
                    List<Name> held = states.holding(place);
                    if (held.size() == 1 && held.get(0).text().equals(setting.value().text())
                            && states.condition().values().size() > 1) {
                        findings.report(setting.at(),
                                place.label() + " sets " + Contradictions.spoken(setting)
                                        + ", which it is on every path to this step.",
                                "Leave the setting out, or look whether an earlier step was meant to change it.",
                                fixes(setting));
                    }
                });
    }

    /** Takes out the words, where the step leaves nothing else. */
    private static Fix[] fixes(Setting setting) {
        SourceRange at = setting.at();
        String before = at.source().content().substring(0, at.offset()).stripTrailing();
        boolean alone = before.endsWith("sets") && !at.source().content().substring(at.end()).stripLeading().startsWith(",");
        int from = before.length() - "sets".length();
        return alone ? new Fix[] {Removal.of("Leave the setting out", new SourceRange(at.source(), from, at.end() - from))}
                : new Fix[0];
    }
}

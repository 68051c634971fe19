/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/** The same step under another name, with other outcomes. */
public record RenamedStep(Name name, List<Outcome> outcomes) implements Step.Cases<Step> {
    @Override
    public Step check(Step.Check step) {
        return new Step.Check(name, step.title(), step.frame(), outcomes, step.at());
    }

    @Override
    public Step observe(Step.Observe step) {
        return new Step.Observe(name, step.title(), step.indicator(), step.frame(), outcomes, step.at());
    }

    @Override
    public Step measure(Step.Measure step) {
        return new Step.Measure(name, step.title(), step.kind(), step.point(), step.through(), step.against(), step.instrument(),
                step.range(), step.sensor(), step.expects(), step.uncertainties(), step.unitDeviation(), step.rows(), step.frame(), outcomes, step.at());
    }

    @Override
    public Step carryOut(Step.Do step) {
        return new Step.Do(name, step.title(), step.erases(), step.repairs(), step.adjusts(), step.frame(), outcomes, step.at());
    }

    @Override
    public Step calculate(Step.Calculate step) {
        return new Step.Calculate(name, step.title(), step.formula(), step.expects(), step.frame(), outcomes, step.at());
    }

    @Override
    public Step perform(Step.Perform step) {
        return new Step.Perform(name, step.title(), step.routine(), step.frame(), outcomes, step.at());
    }

    @Override
    public Step conclude(Step.Conclude step) {
        return step;
    }
}

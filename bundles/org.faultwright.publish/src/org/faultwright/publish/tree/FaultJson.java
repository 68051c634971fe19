/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;

/** Faults with what they make each step show, and the worked examples. */
final class FaultJson {
    private FaultJson() {
    }

    static Json fault(Fault fault, Suspects suspects, List<Step> steps) {
        Json json = new Json().put("id", fault.name().text()).putText("title", Optional.of(fault.title()))
                .put("cases", fault.cases().map(Written::value).orElse(Exact.ONE).toString())
                .putAll("shows", fault.shows(), FaultJson::showing).putNames("remedies", fault.remedies())
                .putTexts("hazards", fault.hazards().stream().map(Written::value).map(Hazard::word).toList());
        List<Json> likelihood = new ArrayList<>();
        steps.stream().filter(step -> step.outcomes().size() > 1).forEach(step -> {
            Json told = new Json();
            shares(told, "before", fault, step, suspects, Suspects.Remedied.NO);
            if (!fault.remedies().isEmpty()) {
                shares(told, "after", fault, step, suspects, Suspects.Remedied.YES);
            }
            if (told.object().size() > 0) {
                likelihood.add(new Json().put("step", step.name().text()).putAll(told));
            }
        });
        return json.putAll("likelihood", likelihood, one -> one);
    }

    /** Nothing where every outcome is as likely as any. */
    private static void shares(Json told, String when, Fault fault, Step step, Suspects suspects, Suspects.Remedied remedied) {
        if (!suspects.isOpen(fault, step, remedied)) {
            told.putAll(when, List.copyOf(suspects.shares(fault, step, remedied).entrySet()), share -> new Json()
                    .put("outcome", share.getKey()).put("share", share.getValue().toString()));
        }
    }

    static Json example(Example example) {
        return new Json().put("title", example.title().text()).putText("of", example.of().map(Name::text))
                .putAll("shows", example.shows(), FaultJson::showing)
                .putText("endsAt", example.endsAt().map(Name::text))
                .put("within", example.within().map(time -> QuantityJson.of(time.value())));
    }

    private static Json showing(Showing showing) {
        return new Json().put("step", showing.step().text()).putAll("possible", showing.possible(),
                possible -> new Json().put("words", possible.words().text())
                        .put("reading", possible.reading().map(QuantityJson::of))
                        .putText("percent", possible.share().map(Exact::toString)));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.StatedDecisionRule;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.UsedDeclarations;
import org.faultwright.quantity.QuantityKind;

/** The procedure as JSON after {@code procedure-tree-1.schema.json}: everything a card says and a machine may need. */
public final class TreeJson implements ProcedureExport {
    /** The address that names the schema; the schema itself is a resource of this bundle. */
    public static final String SCHEMA = "urn:faultwright:procedure-tree:1";
    private static final String SCHEMA_VERSION = "1.2";

    /** The schema that trees follow, JSON Schema 2020-12. */
    public static String schema() {
        try (InputStream in = TreeJson.class.getResourceAsStream("procedure-tree-1.schema.json")) {
            if (in == null) {
                throw new IllegalStateException("the schema is missing from the bundle");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    @Override
    public String name() {
        return "tree-json";
    }

    @Override
    public String title() {
        return "Procedure tree, JSON";
    }

    @Override
    public PublishedFiles publish(Publication publication) {
        return new PublishedFiles(FileName.of(publication.procedure(), ".tree.json"), "application/json",
                tree(TypesetPlan.of(publication)).bytes());
    }

    /** The tree before it is written, to be held against another. */
    public static JsonObject tree(Publication publication) {
        return tree(TypesetPlan.of(publication)).object();
    }

    private static Json tree(CardPlan plan) {
        Publication publication = plan.publication();
        Procedure procedure = plan.procedure();
        Json json = new Json().put("$schema", SCHEMA).put("schemaVersion", SCHEMA_VERSION)
                .put("caution", Caution.SENTENCES).put("id", procedure.name().text()).put("title", procedure.title())
                .put("digest", "sha256:" + publication.digest())
                .put("equipment", procedure.equipment().map(equipment -> new Json().put("title", equipment.title())
                        .putText("protectionClass", equipment.protection().map(known -> known.value().name()))
                        .putTexts("boards", equipment.boards().stream().map(Written::value).toList())))
                .put("revision", revision(publication))
                .putTexts("complaints", procedure.complaints().stream().map(Written::value).toList())
                .putTexts("tools", new UsedDeclarations(plan).tools())
                .put("decisionRule", decisionRule(procedure.decisionRule()))
                .put("ambient", procedure.scope().ambient().map(limit -> QuantityJson.of(limit.value(),
                        Optional.of(QuantityKind.TEMPERATURE))));
        declarations(json, plan);
        json.putText("begin", procedure.first().map(Step::name).map(Name::text)).put("steps", steps(plan, procedure));
        json.putAll("routines", plan.routines(), routine -> new Json()
                .put("id", routine.name().text()).putText("letter", plan.routine(routine.name()).map(CardSection::letter))
                .putText("title", Optional.of(routine.title())).putNames("exits", routine.exits())
                .putText("begin", routine.first().map(Step::name).map(Name::text))
                .put("steps", steps(plan, routine)));
        Suspects suspects = Suspects.of(procedure);
        List<Step> steps = procedure.steps();
        json.putAll("faults", suspects.faults(), fault -> FaultJson.fault(fault, suspects, steps));
        json.putAll("examples", procedure.examples(), FaultJson::example);
        return json.put("findings", findings(publication));
    }

    private static Json revision(Publication publication) {
        Json json = new Json();
        publication.procedure().revision().ifPresent(revision -> json.put("number", revision.number()));
        json.put("status", publication.status().name().toLowerCase(Locale.ROOT));
        publication.procedure().revision().ifPresent(revision -> json.putText("by", revision.by())
                .putText("dated", revision.dated().map(Object::toString)));
        return json;
    }

    private static Json decisionRule(StatedDecisionRule rule) {
        if (rule instanceof StatedDecisionRule.ByRisk risk) {
            return new Json().put("rule", "risk").put("percent", risk.percent().toString());
        }
        return new Json().put("rule", rule instanceof StatedDecisionRule.Guarded ? "guarded" : "simple");
    }

    private static void declarations(Json json, CardPlan plan) {
        UsedDeclarations used = new UsedDeclarations(plan);
        json.putAll("conditions", used.conditions(), DeclarationJson::condition)
                .putAll("instruments", List.copyOf(used.instruments().keySet()), DeclarationJson::instrument)
                .putAll("points", used.points(), DeclarationJson::point)
                .putAll("parts", used.parts(), DeclarationJson::part)
                .putAll("indicators", used.indicators(), DeclarationJson::indicator)
                .putAll("notes", List.copyOf(used.notes().keySet()), DeclarationJson::note);
    }

    private static JsonArray steps(CardPlan plan, StepGraph graph) {
        StepJson writer = new StepJson(plan, graph);
        JsonArray array = new JsonArray();
        plan.order(graph).forEach(step -> array.add(writer.of(step).object()));
        return array;
    }

    private static Json findings(Publication publication) {
        Json json = new Json();
        for (Severity severity : Severity.values()) {
            json.put(severity.name().toLowerCase(Locale.ROOT), publication.of(severity).size());
        }
        return json.putAll("list", publication.findings(), TreeJson::finding);
    }

    private static Json finding(Finding finding) {
        return new Json().put("rule", finding.rule()).put("severity", finding.severity().name().toLowerCase(Locale.ROOT))
                .put("message", finding.message()).put("advice", finding.advice())
                .put("file", finding.at().source().fileName()).put("line", finding.at().line()).put("column", finding.at().column());
    }
}

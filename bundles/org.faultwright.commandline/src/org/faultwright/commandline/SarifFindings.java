/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.SourceRange;

/**
 * Findings as a log in the Static Analysis Results Interchange Format (OASIS SARIF 2.1.0). The path that proves a finding is its code flow, and a
 * fix that was tried is a fix. A finding keeps its fingerprint while lines move: it is made of the rule, the file's name and the message, and
 * counted where these come several times.
 */
final class SarifFindings {
    private static final String FINGERPRINT = "ruleFileMessage/v1";

    private final JsonWriter json;
    private final List<Rule> rules = RuleSet.all();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<String, Integer> seen = new HashMap<>();

    private SarifFindings(JsonWriter json) {
        this.json = json;
        for (int i = 0; i < rules.size(); i++) {
            numbers.put(rules.get(i).header().id(), i);
        }
    }

    static void print(List<Finding> findings, PrintWriter out) throws IOException {
        JsonWriter json = new JsonWriter(out);
        json.setIndent("  ");
        new SarifFindings(json).write(findings);
        json.flush();
        out.println();
    }

    private void write(List<Finding> findings) throws IOException {
        json.beginObject();
        json.name("version").value("2.1.0");
        json.name("runs").beginArray().beginObject();
        tool();
        json.name("columnKind").value("utf16CodeUnits");
        json.name("results").beginArray();
        for (Finding finding : findings) {
            result(finding);
        }
        json.endArray();
        json.endObject().endArray();
        json.endObject();
    }

    private void tool() throws IOException {
        json.name("tool").beginObject().name("driver").beginObject();
        json.name("name").value("Faultwright");
        json.name("version").value(Version.number());
        json.name("rules").beginArray();
        for (Rule rule : rules) {
            json.beginObject();
            json.name("id").value(rule.header().id());
            text("shortDescription", rule.header().summary());
            json.name("defaultConfiguration").beginObject().name("level").value(level(rule.header().severity())).endObject();
            json.name("properties").beginObject().name("tags").beginArray().value(rule.header().group().title()).endArray().endObject();
            json.endObject();
        }
        json.endArray().endObject().endObject();
    }

    private void result(Finding finding) throws IOException {
        json.beginObject();
        json.name("ruleId").value(finding.rule());
        if (numbers.containsKey(finding.rule())) {
            json.name("ruleIndex").value(numbers.get(finding.rule()));
        }
        json.name("level").value(level(finding.severity()));
        text("message", finding.message() + " To do: " + finding.advice());
        json.name("locations").beginArray();
        location(finding.at(), "");
        json.endArray();
        json.name("partialFingerprints").beginObject().name(FINGERPRINT).value(fingerprint(finding)).endObject();
        if (!finding.path().isEmpty()) {
            json.name("codeFlows").beginArray().beginObject().name("threadFlows").beginArray().beginObject().name("locations").beginArray();
            for (PathStep step : finding.path()) {
                json.beginObject().name("location");
                location(step.at(), step.toString());
                json.endObject();
            }
            json.endArray().endObject().endArray().endObject().endArray();
        }
        if (!finding.fixes().isEmpty()) {
            json.name("fixes").beginArray();
            for (Fix fix : finding.fixes()) {
                fix(fix);
            }
            json.endArray();
        }
        json.endObject();
    }

    private void fix(Fix fix) throws IOException {
        json.beginObject();
        text("description", fix.title());
        json.name("artifactChanges").beginArray();
        Map<String, List<Fix.Edit>> byFile = fix.edits().stream().collect(Collectors.groupingBy(edit -> edit.at().source().name(),
                LinkedHashMap::new, Collectors.toList()));
        for (List<Fix.Edit> edits : byFile.values()) {
            json.beginObject();
            artifact(edits.get(0).at());
            json.name("replacements").beginArray();
            for (Fix.Edit edit : edits) {
                json.beginObject();
                region("deletedRegion", edit.at());
                text("insertedContent", edit.replacement());
                json.endObject();
            }
            json.endArray().endObject();
        }
        json.endArray().endObject();
    }

    private void location(SourceRange at, String message) throws IOException {
        json.beginObject().name("physicalLocation").beginObject();
        artifact(at);
        region("region", at);
        json.endObject();
        if (!message.isEmpty()) {
            text("message", message);
        }
        json.endObject();
    }

    private void artifact(SourceRange at) throws IOException {
        json.name("artifactLocation").beginObject().name("uri").value(address(at.source().name())).endObject();
    }

    private void region(String name, SourceRange at) throws IOException {
        json.name(name).beginObject();
        json.name("startLine").value(at.line());
        json.name("startColumn").value(at.column());
        json.name("endLine").value(at.source().line(at.end()));
        json.name("endColumn").value(at.source().column(at.end()));
        json.name("charOffset").value(at.offset());
        json.name("charLength").value(at.length());
        json.endObject();
    }

    /** A relative file stays relative; blanks and other signs that an address cannot hold are escaped (RFC 3986). */
    private static String address(String file) {
        Path path = Path.of(file);
        if (path.isAbsolute()) {
            return path.toUri().toString();
        }
        Path here = Path.of("").toAbsolutePath();
        return here.toUri().relativize(here.resolve(path).normalize().toUri()).toString();
    }

    private void text(String name, String text) throws IOException {
        json.name(name).beginObject().name("text").value(text).endObject();
    }

    /** The levels of SARIF 2.1.0, 3.27.10; advice is a note. */
    private static String level(Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case ADVICE -> "note";
        };
    }

    private String fingerprint(Finding finding) {
        String file = Path.of(finding.at().source().name()).getFileName().toString();
        String words = finding.rule() + "\n" + file + "\n" + finding.message();
        String whole = words + "\n" + seen.merge(words, 1, Integer::sum);
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(whole.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.SourceRange;

/** Findings for other programs, as one JSON document; offsets and columns count UTF-16 units. */
final class JsonFindings {
    private JsonFindings() {
    }

    static void print(List<Finding> findings, int files, PrintWriter out) throws IOException {
        JsonWriter json = new JsonWriter(out);
        json.setIndent("  ");
        json.beginObject();
        json.name("findingsVersion").value(1);
        json.name("files").value(files);
        json.name("findings").beginArray();
        for (Finding finding : findings) {
            write(finding, json);
        }
        json.endArray();
        json.endObject();
        json.flush();
        out.println();
    }

    private static void write(Finding finding, JsonWriter json) throws IOException {
        json.beginObject();
        json.name("rule").value(finding.rule());
        json.name("severity").value(TextFindings.word(finding.severity()));
        place(finding.at(), json);
        json.name("message").value(finding.message());
        json.name("advice").value(finding.advice());
        json.name("path").beginArray();
        for (PathStep step : finding.path()) {
            json.beginObject();
            json.name("step").value(step.step());
            json.name("outcome").value(step.outcome());
            json.endObject();
        }
        json.endArray();
        json.name("fixes").beginArray();
        for (Fix fix : finding.fixes()) {
            json.beginObject();
            json.name("title").value(fix.title());
            json.name("edits").beginArray();
            for (Fix.Edit edit : fix.edits()) {
                json.beginObject();
                place(edit.at(), json);
                json.name("replacement").value(edit.replacement());
                json.endObject();
            }
            json.endArray();
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }

    private static void place(SourceRange at, JsonWriter json) throws IOException {
        json.name("file").value(at.source().name());
        json.name("line").value(at.line());
        json.name("column").value(at.column());
        json.name("offset").value(at.offset());
        json.name("length").value(at.length());
    }
}

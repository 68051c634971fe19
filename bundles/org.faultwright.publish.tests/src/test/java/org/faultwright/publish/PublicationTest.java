/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.SourceText;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;

class PublicationTest {
    private static final Publication SAMPLE = Samples.everything();

    private static final String HEAD = "library House \"House\" condition Lid { shut, lifted } ";

    private static CheckedProcedure checked(String text, String library) {
        ProcedureReader reader = new ProcedureReader((name, from) -> name.equals("House") ? Optional.of(new SourceText("House.procedure", library))
                : Optional.empty());
        return new FullCheck(Optional.empty()).check((Procedure) reader.read(new SourceText("P.procedure", text)));
    }

    private static CheckedProcedure checked(String text) {
        return checked(text, HEAD);
    }

    @Test
    void should_have_a_sample_without_errors() {
        assertEquals(List.of(), SAMPLE.errors());
    }

    @Test
    void should_refuse_open_errors_with_one_sentence_that_says_where() {
        CheckedProcedure wrong = checked("procedure P\ncheck A \"A\" { yes -> Gone no -> Lost }\nconclude End \"E\" { finds nothing }");
        PublishingRefused refused = assertThrows(PublishingRefused.class, () -> Publication.of(wrong, Drafts.REFUSED));

        assertEquals("P has 2 errors, the first at P.procedure:2:22 (unknown-name): remove them, or ask for a draft.", refused.getMessage());
    }

    @Test
    void should_allow_open_errors_as_a_draft() throws PublishingRefused {
        Publication draft = Publication.of(checked("procedure P check A \"A\" { yes -> Gone no -> End } conclude End \"E\" { finds nothing }"),
                Drafts.ALLOWED);

        assertTrue(draft.hasErrors());
    }

    @Test
    void should_not_take_warnings_for_errors() throws PublishingRefused {
        CheckedProcedure warned = checked("procedure P check A \"A\" { yes -> End no -> End } conclude End \"E\" { finds nothing }");

        assertTrue(warned.findings().stream().anyMatch(finding -> finding.severity() == Severity.WARNING));
        assertFalse(Publication.of(warned, Drafts.REFUSED).hasErrors());
    }

    /** A routine of the house with a limit that takes in nothing stands on every card that uses it. */
    @Test
    void should_refuse_a_procedure_whose_library_has_an_error() {
        String library = HEAD + "routine R \"R\" { exits done measure M \"M\" { dc voltage expects 5 V .. 4 V within -> done outside -> done } }";
        String text = "procedure P uses House perform A \"A\" by R { done -> End } conclude End \"E\" { finds nothing }";
        PublishingRefused refused = assertThrows(PublishingRefused.class, () -> Publication.of(checked(text, library), Drafts.REFUSED));

        assertTrue(refused.getMessage().startsWith("P has 1 error in its libraries, the first at House.procedure:1:"), refused.getMessage());
        assertEquals(List.of(), checked(text, library.replace("4 V", "6 V")).errors());
    }

    /** Whoever reads a tree, walks the page or signs the report must see it too, with the file that it stands in. */
    @Test
    void should_tell_an_error_of_a_library_on_everything_that_is_published() throws PublishingRefused {
        String library = HEAD + "\nroutine R \"R\" { exits done measure M \"M\" { dc voltage expects 5 V .. 4 V within -> done outside -> done } }";
        String text = "procedure P uses House perform A \"A\" by R { done -> End } conclude End \"E\" { finds nothing }";
        Publication draft = Publication.of(checked(text, library), Drafts.ALLOWED);

        assertEquals(1, draft.of(Severity.ERROR).size());
        assertEquals("line 2 of House.procedure", draft.place(draft.errors().get(0)));
        String tree = Samples.string("tree-json", draft);
        assertTrue(tree.replaceAll("\\s", "").contains("\"findings\":{\"error\":1,"), tree);
        assertTrue(Samples.string("bench-html", draft).replaceAll("\\s", "").contains("\"error\":1"));
        assertTrue(Samples.string("card-html", draft).contains("At line 2 of House.procedure"));
        String report = new String(((FolderExport) Exports.named("quality-html").orElseThrow()).publish(
                new ProcedureFolder("House", List.of(draft), Set.of())).bytes(), StandardCharsets.UTF_8);
        assertTrue(report.contains("line 2 of House.procedure"), report);
        assertFalse(report.contains("None found: open errors"));
    }

    @Test
    void should_take_a_procedure_without_revision_for_a_draft() {
        Publication publication = Samples.text("procedure P conclude End { finds nothing }");
        assertEquals(Optional.empty(), publication.procedure().revision());
        assertEquals(Revision.Status.DRAFT, publication.status());
        assertEquals("No revision, draft", publication.revision());
        assertEquals("P", publication.title());
    }
}

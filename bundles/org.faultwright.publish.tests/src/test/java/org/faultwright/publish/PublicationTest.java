/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.junit.jupiter.api.Test;

class PublicationTest {
    private static final Publication SAMPLE = Samples.everything();

    private static Finding finding(Severity severity) {
        return new Finding("some-rule", severity, SAMPLE.procedure().name().at(), "It is wrong.", "Mend it.", List.of(),
                List.of());
    }

    @Test
    void should_have_a_sample_without_errors() {
        assertEquals(List.of(), SAMPLE.of(Severity.ERROR));
    }

    @Test
    void should_refuse_open_errors_with_one_sentence_that_says_where() {
        List<Finding> findings = List.of(finding(Severity.ERROR), finding(Severity.ERROR));
        PublishingRefused refused = assertThrows(PublishingRefused.class,
                () -> Publication.of(SAMPLE.procedure(), findings, Drafts.REFUSED));
        assertEquals("EdnorColdPlate has 2 errors, the first at EdnorColdPlate.procedure:1:11 (some-rule): remove them,"
                + " or ask for a draft.", refused.getMessage());
    }

    @Test
    void should_allow_open_errors_as_a_draft() throws PublishingRefused {
        Publication draft = Publication.of(SAMPLE.procedure(), List.of(finding(Severity.ERROR)), Drafts.ALLOWED);
        assertTrue(draft.hasErrors());
    }

    @Test
    void should_not_take_warnings_for_errors() throws PublishingRefused {
        Publication plain = Publication.of(SAMPLE.procedure(), List.of(finding(Severity.WARNING)), Drafts.REFUSED);
        assertFalse(plain.hasErrors());
    }

    @Test
    void should_take_a_procedure_without_revision_for_a_draft() {
        Procedure p = Samples.text("procedure P conclude End { finds nothing }").procedure();
        assertEquals(Optional.empty(), p.revision());
        Publication publication = Samples.of(p, List.of());
        assertEquals(Revision.Status.DRAFT, publication.status());
        assertEquals("No revision, draft", publication.revision());
        assertEquals("P", publication.title());
    }
}

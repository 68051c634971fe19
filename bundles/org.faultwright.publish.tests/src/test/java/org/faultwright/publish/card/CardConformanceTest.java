/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.Hostile;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Cards before veraPDF's validation model, for PDF/A-2a (ISO 19005-2) and PDF/UA-1 (ISO 14289-1). */
class CardConformanceTest {
    @BeforeAll
    static void foundry() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    static Stream<Arguments> cards() {
        Map<String, Publication> cards = Map.of(
                "every feature", Samples.everything(), "pictures and a table of readings", Samples.demo(Samples.REFERENCE),
                "a draft with errors", Samples.text("procedure P check A \"Is it?\" { yes -> Nowhere }"),
                "hostile words", Hostile.publication(),
                "nothing at all", Samples.text("procedure P"));
        return cards.entrySet().stream().flatMap(card -> Stream.of(PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFUA_1)
                .map(flavour -> Arguments.of(card.getKey(), flavour, card.getValue())));
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("cards")
    void should_conform(String what, PDFAFlavour flavour, Publication publication) throws Exception {
        ValidationResult result = validate(Samples.publish("card-pdf", publication).bytes(), flavour);
        List<String> failed = result.getTestAssertions().stream()
                .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED).limit(5)
                .map(assertion -> assertion.getRuleId().getClause() + ": " + assertion.getMessage()).toList();
        assertEquals(List.of(), failed);
        assertTrue(result.isCompliant());
        assertTrue(result.getTotalAssertions() > 1000, "assertions: " + result.getTotalAssertions());
    }

    @ParameterizedTest
    @EnumSource(names = { "PDFA_2_A", "PDFUA_1" })
    void should_print_quality_reports_that_conform(PDFAFlavour flavour) throws Exception {
        FolderExport export = (FolderExport) Exports.named("quality-pdf").orElseThrow();
        byte[] pdf = export.publish(new ProcedureFolder("Slipway", List.of(Samples.everything(), Hostile.publication()),
                Set.of())).bytes();
        assertTrue(validate(pdf, flavour).isCompliant());
    }

    private static ValidationResult validate(byte[] pdf, PDFAFlavour flavour) throws Exception {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            return validator.validate(parser);
        }
    }
}

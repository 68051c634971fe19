/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TimeZone;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ExportsTest {
    static Stream<ProcedureExport> procedureExports() {
        return Exports.all().stream().filter(ProcedureExport.class::isInstance).map(ProcedureExport.class::cast);
    }

    static Stream<FolderExport> folderExports() {
        return Exports.all().stream().filter(FolderExport.class::isInstance).map(FolderExport.class::cast);
    }

    private static ProcedureFolder folder() {
        return new ProcedureFolder("Slipway", List.of(Samples.everything()), Set.of());
    }

    @Test
    void should_name_each_export_once_and_find_it_by_that_name() {
        Set<String> names = new HashSet<>();
        for (Export export : Exports.all()) {
            assertTrue(export.name().matches("[a-z]+(-[a-z0-9]+)+"), export.name());
            assertTrue(names.add(export.name()), export.name());
            assertEquals(Optional.of(export), Exports.named(export.name()));
            assertFalse(export.title().isBlank());
        }
        assertEquals(Exports.all().size(), names.size());
        assertEquals(Optional.empty(), Exports.named("no-such-export"));
    }

    @ParameterizedTest
    @MethodSource("procedureExports")
    void should_give_the_same_bytes_for_the_same_procedure(ProcedureExport export) {
        byte[] first = export.publish(Samples.everything()).bytes();
        byte[] again = elsewhere(() -> export.publish(Samples.everything()).bytes());
        assertTrue(first.length > 1000);
        assertArrayEquals(first, again);
    }

    @ParameterizedTest
    @MethodSource("folderExports")
    void should_give_the_same_bytes_for_the_same_folder(FolderExport export) {
        byte[] first = export.publish(folder()).bytes();
        byte[] again = elsewhere(() -> export.publish(folder()).bytes());
        assertTrue(first.length > 500);
        assertArrayEquals(first, again);
    }

    /** In another place of the world, where dates, numbers and capitals are written otherwise. */
    private static byte[] elsewhere(Supplier<byte[]> publish) {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            return publish.get();
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    /**
     * Everything that a person reads carries both sentences. The texts alone do not: each is the source as its digest says, byte for
     * byte, for those who write.
     */
    @Test
    void should_put_the_caution_on_everything_that_is_read() throws IOException {
        for (Export export : Stream.concat(procedureExports(), folderExports()).toList()) {
            PublishedFiles published = export instanceof ProcedureExport one ? one.publish(Samples.everything())
                    : ((FolderExport) export).publish(folder());
            boolean pdf = published.mediaType().equals("application/pdf");
            String read = pdf ? words(published.bytes()) : new String(published.bytes(), StandardCharsets.UTF_8).replaceAll("<[^>]*>", " ");
            String even = read.replace("&#39;", "'").replace("&apos;", "'").replaceAll("[\\s\u00A0]+", "");
            boolean cautions = even.contains(Caution.FIRST.replaceAll("\\s", "")) && even.contains(Caution.TRAINED.replaceAll("\\s", ""));
            assertEquals(!export.name().endsWith("-text"), cautions, export.name());
        }
    }

    private static String words(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    @ParameterizedTest
    @MethodSource("procedureExports")
    void should_name_files_after_the_procedure_and_tell_them_apart(ProcedureExport export) {
        assertTrue(export.publish(Samples.everything()).fileName().startsWith("EdnorColdPlate."));
    }

    @Test
    void should_give_each_export_a_file_name_of_its_own() {
        List<String> names = Stream.concat(
                procedureExports().map(export -> export.publish(Samples.everything()).fileName()),
                folderExports().map(export -> export.publish(folder()).fileName())).toList();
        assertEquals(names.size(), new HashSet<>(names).size(), names.toString());
    }

    @ParameterizedTest
    @MethodSource("procedureExports")
    void should_publish_a_text_of_which_hardly_anything_was_understood(ProcedureExport export) {
        Publication broken = Samples.text("procedure Broken \"half\" check A \"?\" { yes -> } measure B { -> Nowhere }"
                + " perform C by NoSuchRoutine { x -> A at most 2 times else Missing } conclude D { finds NoSuchFault }"
                + " observe E at NoSuchLamp { 3 blinks -> A } calculate F { value (A - ");
        assertTrue(export.publish(broken).bytes().length > (isText(export) ? 200 : 500));
    }

    @ParameterizedTest
    @MethodSource("folderExports")
    void should_publish_a_folder_of_broken_and_empty_texts_and_none(FolderExport export) {
        ProcedureFolder bad = new ProcedureFolder("", List.of(Samples.text("procedure Broken check A \"?\" { yes -> }"
                + " perform C by NoSuch { x -> A } fault F { shows A maybe } example \"x\" { A 3 V ends at Nowhere }"),
                Samples.text("procedure Empty")), Set.of());
        assertTrue(export.publish(bad).bytes().length > 200);
        assertTrue(export.publish(new ProcedureFolder("none", List.of(), Set.of())).bytes().length > 100);
    }

    @ParameterizedTest
    @MethodSource("procedureExports")
    void should_publish_a_procedure_without_steps(ProcedureExport export) {
        assertTrue(export.publish(Samples.text("procedure Empty")).bytes().length > (isText(export) ? 10 : 200));
    }

    /** As long as what the author wrote. */
    private static boolean isText(Export export) {
        return export.name().equals("procedure-text");
    }
}

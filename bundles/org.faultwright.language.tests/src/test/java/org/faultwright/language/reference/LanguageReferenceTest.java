/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.eclipse.xtext.GrammarUtil;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.ProcedureStandaloneSetup;
import org.faultwright.language.services.ProcedureGrammarAccess;
import org.junit.jupiter.api.Test;

/** The reference has every word of the grammar, and what it shows is right. */
class LanguageReferenceTest {
    private static final Path HOW_DO_I_SAY = Path.of("..", "org.faultwright.workbench", "help", "how-do-i-say.md");
    private static final String PAGES = "bundles/org.faultwright.language/src/org/faultwright/language/reference/*.md";
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
    /** Brackets and commas, and other spellings of a sign. */
    private static final Set<String> PUNCTUATION = Set.of("{", "}", "(", ")", ",", ".", "·", "−", "×", "÷");

    private static Set<String> keywords() {
        return GrammarUtil.getAllKeywords(new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration()
                .getInstance(ProcedureGrammarAccess.class).getGrammar());
    }

    @Test
    void should_have_an_entry_for_every_keyword_of_the_grammar() {
        Set<String> missing = new TreeSet<>(keywords());
        assertTrue(missing.size() > 100, "only " + missing.size() + " keywords were found");
        missing.removeAll(PUNCTUATION);
        missing.removeAll(LanguageReference.words());

        assertEquals(Set.of(), missing, "these words of the language stand in no form of the reference: add each to the "
                + "```syntax block of an entry in " + PAGES);
    }

    @Test
    void should_show_every_keyword_in_an_example() {
        Set<String> missing = new TreeSet<>(keywords());
        missing.removeAll(PUNCTUATION);
        missing.removeIf(sign -> !Character.isLetter(sign.charAt(0)));
        LanguageReference.entries().forEach(entry -> entry.examples().forEach(example -> missing.removeAll(SampleTexts.tokens(example))));

        // other forms of what is shown: another status, another rule, another way of writing a limit or a place
        missing.removeAll(Set.of("peak", "difference", "through"));
        assertEquals(Set.of(), missing, "no example of the reference has these words: add a ```procedure block to " + PAGES
                + " and the same lines to a text in bundles/org.faultwright.language.tests/src/test/resources/reference");
    }

    @Test
    void should_have_a_form_prose_and_an_example_in_every_entry() {
        Set<String> titles = new HashSet<>();
        for (LanguageReference.Page page : LanguageReference.pages()) {
            assertFalse(page.entries().isEmpty(), page.id());
            for (ReferenceEntry entry : page.entries()) {
                assertTrue(titles.add(entry.title()), "two entries are called " + entry.title());
                assertFalse(entry.form().isBlank(), entry.title() + " has no form");
                assertFalse(entry.examples().isEmpty(), entry.title() + " has no example");
                assertTrue(entry.markdown().replaceAll("(?ms)^```.*?^```$", "").strip().length() > 40, entry.title() + " says too little");
            }
        }
        assertTrue(titles.size() > 40, titles.size() + " entries");
    }

    @Test
    void should_take_every_example_from_a_text_that_checks() throws IOException {
        int compared = 0;
        for (ReferenceEntry entry : LanguageReference.entries()) {
            for (String example : entry.examples()) {
                assertTrue(SampleTexts.have(example),
                        "the example of \"" + entry.title() + "\" stands in no text of " + SampleTexts.FOLDER + ":\n" + example);
                compared++;
            }
        }
        assertTrue(compared > 50, compared + " examples");
    }

    @Test
    void should_find_neither_error_nor_warning_in_the_texts_that_examples_are_taken_from() throws IOException {
        for (Path sample : SampleTexts.files()) {
            List<Finding> found = new Checker(RuleSet.all(), Optional.of(TODAY)).check(ProcedureReader.overFiles().read(sample));
            assertEquals(List.of(), found.stream().filter(finding -> finding.severity() != Severity.ADVICE)
                    .map(finding -> finding.rule() + ": " + finding.message()).toList(), sample.toString());
        }
    }

    @Test
    void should_answer_thirty_questions_with_lines_from_those_texts() throws IOException {
        String page = Files.readString(HOW_DO_I_SAY).replace("\r\n", "\n");
        List<String> answers = List.of(page.split("(?m)^## ")).subList(1, page.split("(?m)^## ").length);
        assertTrue(answers.size() >= 30, answers.size() + " answers");
        for (String answer : answers) {
            List<String> blocks = Pattern.compile("(?ms)^```procedure\n(.*?)^```$").matcher(answer).results()
                    .map(block -> block.group(1)).toList();
            assertFalse(blocks.isEmpty(), answer);
            blocks.forEach(block -> assertTrue(SampleTexts.have(block), "stands in no text of " + SampleTexts.FOLDER + ":\n" + block));
        }
    }

    @Test
    void should_answer_for_a_word() {
        assertEquals(List.of("needs"), titles("needs"));
        assertEquals(List.of("decision rule"), titles("guarded"));
        assertTrue(titles("at").containsAll(List.of("measure", "observe", "Limits")), titles("at").toString());
        assertEquals(List.of("Outcomes and arrows"), titles("arrow"));
        assertEquals(List.of(), titles("solder"));
        assertEquals(List.of(), titles(""));
        assertTrue(LanguageReference.near("neds").contains("needs"), LanguageReference.near("neds").toString());
    }

    private static List<String> titles(String word) {
        return LanguageReference.about(word).stream().map(ReferenceEntry::title).toList();
    }
}

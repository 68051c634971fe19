/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.adding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Adds a rule, an export and a kind of step as DEVELOPERS.md says, in a scratch copy, and counts the files. */
class AddingTest {
    private static final String FAN = """
            procedure Fan "Fan does not turn"

            begin at FanTurns
            check FanTurns "DOES THE FAN TURN?" {
                takes 1 min
                yes -> Fine
                no  -> Open
            }
            conclude Fine "Fan seen to" { finds nothing }
            conclude Open "Fan does not turn" { refers to "the workshop" }
            """;

    private static final String RULE = """
            package org.faultwright.analysis.rules;

            import java.util.Locale;
            import org.faultwright.analysis.Findings;
            import org.faultwright.analysis.RuleHeader.Group;
            import org.faultwright.analysis.Rule;
            import org.faultwright.analysis.RuleHeader;
            import org.faultwright.analysis.Severity;
            import org.faultwright.analysis.Subject;
            import org.faultwright.procedure.Step;

            /** A title in capital letters. */
            public final class TitleInCapitals implements Rule {
                @Override
                public RuleHeader header() {
                    return new RuleHeader("title-in-capitals", Severity.ADVICE, Group.NAMES, "A title stands in capital letters.");
                }

                @Override
                public void check(Subject subject, Findings findings) {
                    for (Step step : DocumentSteps.of(subject)) {
                        String title = step.title();
                        if (title.length() > 3 && title.equals(title.toUpperCase(Locale.ROOT))) {
                            findings.report(step.name().at(), step.name() + " is told in capital letters.", "Write it as a sentence.");
                        }
                    }
                }
            }
            """;

    @TempDir
    private Path folder;
    private ScratchCopy copy;
    private Path text;

    @BeforeEach
    void beginACopy() throws IOException {
        copy = new ScratchCopy(folder.resolve("copy"));
        text = Files.writeString(folder.resolve("Fan.procedure"), FAN);
    }

    @Test
    void should_add_a_rule_by_three_files() throws Exception {
        copy.write("org/faultwright/analysis/rules/TitleInCapitals.java", RULE);
        copy.change("org/faultwright/analysis/checking/RuleSet.java", "import org.faultwright.analysis.rules.ToleranceBeyondNominal;",
                "import org.faultwright.analysis.rules.TitleInCapitals;\n", "new MissingTitle(),", "new TitleInCapitals(),\n                ");
        copy.write("org/faultwright/analysis/rules/pages/title-in-capitals.md", "Capital letters are read slowly.\n\nWrite a sentence.\n\n```procedure bad\n"
                + FAN.replace("    takes", "//    ^ title-in-capitals\n    takes") + "```\n\n```procedure good\n" + FAN.replace("DOES THE FAN TURN", "Does the fan turn") + "```\n");

        assertEquals(List.of(), copy.compile());
        assertEquals(3, copy.touched().size(), copy.touched().toString());
        String checked = copy.faultwright("check", "--no-cache", text.toString());
        assertTrue(checked.contains("title-in-capitals") && checked.contains("is told in capital letters."), checked);
        assertTrue(copy.faultwright("explain", "title-in-capitals").contains("Capital letters are read slowly."));
        assertTrue(copy.faultwright("explain").contains("title-in-capitals"), "the index has it");
    }

    @Test
    void should_add_an_export_by_one_file() throws Exception {
        copy.change("org/faultwright/publish/exports/Exports.java", "FolderExport.of(\"quality-json\"", """
                FolderExport.of("steps-text", "Count of steps", folder -> new org.faultwright.publish.PublishedFiles("steps.txt", "text/plain",
                        folder.procedures().stream().map(one -> one.procedure().title() + ": " + one.procedure().steps().size() + "\\n")
                                .collect(Collectors.joining()).getBytes())),
                """);

        assertEquals(List.of(), copy.compile());
        assertEquals(1, copy.touched().size(), copy.touched().toString());
        assertTrue(copy.faultwright("publish", "--help").contains("steps-text"), "the command line offers it");
        Path into = folder.resolve("cards");
        copy.faultwright("publish", "--drafts", "--as", "steps-text", "--into", into.toString(), text.toString());
        assertEquals("Fan does not turn: 3\n", Files.readString(into.resolve("steps.txt")));
        // the window is not here; its dialog reads the same list, whole
        String dialog = Files.readString(ScratchCopy.original("org/faultwright/workbench/publishing/PublishDialog.java"));
        assertTrue(dialog.contains("Exports.all().forEach(export -> forms.put("), "the dialog offers every export");
    }

    /** What is generated from the grammar is not made here: its two files, and the translation, are counted by the test below. */
    @Test
    void should_add_a_kind_of_step_by_what_the_compiler_asks_for() throws Exception {
        copy.change("org/faultwright/procedure/Step.java",
                "\"do\", \"calculate\", \"perform\", \"conclude\");", "\"listen\", ",
                "    /** One answer for each kind of step. */", """
                    /** A sound that is listened for. */
                    record Listen(Name name, String title, Optional<Written<String>> sound, StepFrame frame, List<Outcome> outcomes, SourceRange at) implements Step {
                        @Override
                        public <R> R match(Cases<R> cases) {
                            return cases.listen(this);
                        }

                        @Override
                        public String keyword() {
                            return "listen";
                        }

                        @Override
                        public Answer answer() {
                            return Answer.SEEN;
                        }

                        @Override
                        public Step renamed(Name newName, List<Outcome> newOutcomes) {
                            return new Listen(newName, title, sound, frame, newOutcomes, at);
                        }

                        @Override
                        public Step framed(StepFrame newFrame) {
                            return new Listen(name, title, sound, newFrame, outcomes, at);
                        }

                        @Override
                        public List<Mention> mentions() {
                            return List.of();
                        }
                    }

                """, "        R conclude(Conclude step);", "        R listen(Listen step);\n\n");
        Set<String> asked = copy.compile("org.faultwright.procedure", "org.faultwright.analysis", "org.faultwright.publish", "org.faultwright.language",
                "org.faultwright.language.server", "org.faultwright.commandline").stream()
                .map(error -> error.substring(0, error.indexOf(':'))).collect(Collectors.toCollection(TreeSet::new));
        assertEquals(Set.of("PlainClauses.java", "StepJson.java"), asked, "every other place asks the step itself");

        copy.change("org/faultwright/publish/plan/PlainClauses.java", "    @Override\n    public List<Clause> conclude(", """
                    @Override
                    public List<Clause> listen(Step.Listen step) {
                        return Clause.of("Listen for", step.sound());
                    }

                """);
        copy.change("org/faultwright/publish/tree/StepJson.java", "    @Override\n    public Json conclude(", """
                    @Override
                    public Json listen(Step.Listen step) {
                        return start(step, "listen").putText("sound", step.sound().map(Written::value));
                    }

                """);
        assertEquals(3, copy.touched().size(), copy.touched().toString());
        copy.write("org/faultwright/adding/Listening.java", LISTENING);
        assertEquals(List.of(), copy.compile());
        String said = (String) copy.call("org.faultwright.adding.Listening", "published", new Class<?>[] {String.class}, text.toString());
        assertTrue(said.contains("Listen for") && said.contains("a hum"), "the card says it: " + said);
        assertTrue(said.replace(" ", "").contains("\"kind\":\"listen\""), "the tree has it: " + said);
        assertTrue(said.contains("%PDF"), "it can be printed");
        assertTrue(said.contains("proposed: listen: listen ${1:Name}"), "an editor proposes it: " + said);
        assertFalse(said.contains("found: rule-failed"), said);
    }

    private static final String LISTENING = """
            package org.faultwright.adding;

            import java.nio.charset.StandardCharsets;
            import java.nio.file.Files;
            import java.nio.file.Path;
            import java.util.List;
            import java.util.Optional;
            import org.faultwright.analysis.checking.CheckedProcedure;
            import org.faultwright.analysis.checking.FullCheck;
            import org.faultwright.language.ProcedureReader;
            import org.faultwright.language.server.EditingServices;
            import org.faultwright.language.server.Proposals;
            import org.faultwright.procedure.Procedure;
            import org.faultwright.procedure.Step;
            import org.faultwright.procedure.Written;
            import org.faultwright.publish.Drafts;
            import org.faultwright.publish.Publication;
            import org.faultwright.publish.PublishedFiles;
            import org.faultwright.publish.exports.AloneExport;
            import org.faultwright.publish.exports.Exports;

            public final class Listening {
                public static String published(String file) throws Exception {
                    Procedure p = (Procedure) ProcedureReader.overFiles().read(Path.of(file));
                    List<Step> steps = p.steps().stream().map(step -> step instanceof Step.Check check ? new Step.Listen(check.name(), check.title(),
                            Optional.of(new Written<>("a hum", check.at())), check.frame(), check.outcomes(), check.at()) : step).toList();
                    CheckedProcedure checked = new FullCheck(Optional.empty()).check(p.withSteps(steps));
                    StringBuilder said = new StringBuilder();
                    checked.findings().forEach(finding -> said.append("found: ").append(finding.rule()).append('\\n'));
                    AloneExport alone = new AloneExport(Publication.of(checked, Drafts.ALLOWED), Optional.empty());
                    for (String form : List.of("card-html", "tree-json", "card-pdf")) {
                        for (PublishedFiles made : alone.of(Exports.named(form).orElseThrow())) {
                            said.append(new String(made.bytes(), StandardCharsets.ISO_8859_1));
                        }
                    }
                    String text = Files.readString(Path.of(file)) + "\\nli";
                    Proposals.at(new EditingServices().update(file, text), text.length()).forEach(one -> said.append("proposed: ").append(one.label()).append(": ").append(one.insert()).append('\\n'));
                    return said.toString();
                }
            }
            """;

    /** Whatever has to know all kinds asks {@link Step#KEYWORDS} or is found here. */
    @Test
    void should_name_all_kinds_of_step_in_six_source_files_and_one_schema() throws IOException {
        Set<String> naming = new TreeSet<>();
        try (Stream<Path> all = Files.walk(ScratchCopy.bundles())) {
            for (Path file : all.filter(AddingTest::isSource).toList()) {
                String content = Files.readString(file);
                if (Step.KEYWORDS.stream().allMatch(kind -> names(kind, content))) {
                    naming.add(file.getFileName().toString());
                }
            }
        }
        Set<String> expected = new TreeSet<>(List.of("Procedure.xtext", "ProcedureText.ecore", "Step.java", "StepTranslator.java", "PlainClauses.java", "StepJson.java"));
        // a format is described apart from the program that writes it; blanks of its own for completion are a kind's choice
        expected.addAll(List.of("procedure-tree-1.schema.json", "Snippets.java"));

        assertEquals(expected, naming);
    }

    private static boolean isSource(Path file) {
        String path = file.toString().replace('\\', '/');
        return Files.isRegularFile(file) && !path.contains("/target/") && !path.contains("-gen/") && !path.contains(".tests/") && !path.contains("/bin/")
                && path.matches(".*\\.(java|xtext|ecore|js|json|xml|properties|css)");
    }

    /** By its word in quotation marks, by the class of the model or by its record. */
    private static boolean names(String kind, String content) {
        String type = Character.toUpperCase(kind.charAt(0)) + kind.substring(1);
        return Pattern.compile("[\"']" + kind + "[\"']|\\b" + type + "Text\\b|\\bStep\\." + type + "\\b|\\brecord " + type + "\\(").matcher(content).find();
    }
}

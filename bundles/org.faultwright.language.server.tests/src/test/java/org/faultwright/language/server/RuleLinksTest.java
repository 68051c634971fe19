/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.PublishDiagnosticsCapabilities;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.services.LanguageClient;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.checking.RulePage;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.language.kept.KeptPages;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Language Server Protocol 3.17: Diagnostic.codeDescription, for an editor that says publishDiagnostics.codeDescriptionSupport. */
class RuleLinksTest {
    private static final String TEXT = """
            procedure Fan "Fan rattles"
            check Listen "Does it rattle?" { yes -> Quite no -> Quiet }
            conclude Quiet "Quiet" { finds nothing }
            """;

    @TempDir
    private Path folder;

    private List<Diagnostic> told(Optional<Boolean> support, KeptPages pages) throws InterruptedException, ExecutionException {
        List<PublishDiagnosticsParams> told = new CopyOnWriteArrayList<>();
        ProcedureLanguageServer server = new ProcedureLanguageServer(pages);
        server.connect((LanguageClient) Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] { LanguageClient.class }, (self, method, given) -> {
            if (method.getName().equals("publishDiagnostics")) {
                told.add((PublishDiagnosticsParams) given[0]);
            }
            return null;
        }));
        InitializeParams params = new InitializeParams();
        support.ifPresent(said -> {
            PublishDiagnosticsCapabilities findings = new PublishDiagnosticsCapabilities();
            findings.setCodeDescriptionSupport(said);
            TextDocumentClientCapabilities text = new TextDocumentClientCapabilities();
            text.setPublishDiagnostics(findings);
            ClientCapabilities able = new ClientCapabilities();
            able.setTextDocument(text);
            params.setCapabilities(able);
        });
        server.initialize(params).get();
        String address = folder.resolve("Fan.procedure").toUri().toString();
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(address, "procedure", 1, TEXT)));
        List<Diagnostic> found = told.get(0).getDiagnostics();
        Diagnostic unknown = found.stream().filter(one -> one.getCode().getLeft().equals("unknown-name")).findFirst().orElseThrow();
        server.getTextDocumentService().codeAction(new CodeActionParams(new TextDocumentIdentifier(address), unknown.getRange(),
                new CodeActionContext(List.of(unknown)))).get().forEach(action -> assertEquals(List.of(unknown), action.getRight().getDiagnostics()));
        server.shutdown().get();
        server.exit();
        return found;
    }

    private static Path page(Diagnostic finding) {
        return Path.of(URI.create(finding.getCodeDescription().getHref()));
    }

    @Test
    void should_link_each_finding_to_the_page_of_its_rule() throws InterruptedException, ExecutionException, IOException {
        Path pages = folder.resolve("a folder with spaces & ümlauts").resolve("rules");

        for (Diagnostic finding : told(Optional.of(true), new KeptPages(Optional.of(pages)))) {
            String rule = finding.getCode().getLeft();
            assertTrue(finding.getCodeDescription().getHref().startsWith("file:///"), finding.getCodeDescription().getHref());
            assertEquals(pages.resolve(rule + ".html"), page(finding));
            assertTrue(Files.readString(page(finding)).contains("<h1>" + rule + "</h1>"));
        }
    }

    @Test
    void should_link_nothing_where_the_editor_opens_no_links() throws InterruptedException, ExecutionException {
        for (Optional<Boolean> support : List.of(Optional.<Boolean>empty(), Optional.of(false))) {
            List<Diagnostic> found = told(support, new KeptPages(Optional.of(folder.resolve("rules"))));

            assertFalse(found.isEmpty());
            assertTrue(found.stream().allMatch(finding -> finding.getCodeDescription() == null));
            assertFalse(Files.exists(folder.resolve("rules")), "nothing is written that nobody opens");
        }
    }

    @Test
    void should_link_nothing_where_nothing_can_be_written() throws IOException, InterruptedException, ExecutionException {
        // a file where the folder should be: nobody can write into that, whatever rights the account has
        Path taken = Files.writeString(folder.resolve("taken"), "mine");

        for (KeptPages pages : List.of(new KeptPages(Optional.of(taken)), new KeptPages(Optional.of(taken.resolve("rules"))), new KeptPages(Optional.empty()))) {
            List<Diagnostic> found = told(Optional.of(true), pages);

            assertFalse(found.isEmpty());
            assertTrue(found.stream().allMatch(finding -> finding.getCodeDescription() == null));
        }
        assertEquals("mine", Files.readString(taken));
    }

    @Test
    void should_link_nothing_where_a_rule_has_no_page() {
        RuleLinks links = new RuleLinks(new KeptPages(Optional.of(folder)));

        for (String rule : List.of("no-such-rule", "", "../unknown-name", "unknown-name/", "UNKNOWN-NAME")) {
            assertEquals(Optional.empty(), links.to(rule), rule);
        }
        assertTrue(links.to("unknown-name").isPresent());
    }

    @Test
    void should_write_a_page_again_that_is_gone_or_says_something_else() throws IOException {
        Path file = folder.resolve("unknown-name.html");
        Path elsewhere = Files.writeString(folder.resolve("elsewhere"), "not ours");
        Files.createSymbolicLink(file, elsewhere);

        RuleLinks links = new RuleLinks(new KeptPages(Optional.of(folder)));
        String link = links.to("unknown-name").orElseThrow();
        String page = Files.readString(file);
        assertEquals("not ours", Files.readString(elsewhere), "a link is replaced, and what it led to left alone");
        assertTrue(page.startsWith("<!DOCTYPE html>"));

        Files.delete(file);
        assertEquals(Optional.of(link), links.to("unknown-name"));
        assertEquals(page, Files.readString(file));

        Files.writeString(file, "of an earlier build");
        assertEquals(Optional.of(link), new RuleLinks(new KeptPages(Optional.of(folder))).to("unknown-name"));
        assertEquals(page, Files.readString(file));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(2, left.count(), "nothing half written stays");
        }
    }

    @Test
    void should_refuse_a_name_that_leads_elsewhere() {
        KeptPages pages = new KeptPages(Optional.of(folder.resolve("rules")));

        for (String name : List.of("../x.html", "/x.html", "x", ".html", "a\\b.html", "x.html\n", "x".repeat(300) + ".html", "")) {
            assertEquals(Optional.empty(), pages.write(name, "words"), name);
        }
        assertFalse(Files.exists(folder.resolve("rules")));
    }

    /** Every page, read by the platform's own parser of XML: the HTML is written so that it is both. */
    @Test
    void should_say_all_of_every_page_and_nothing_as_markup() throws ParserConfigurationException, IOException, SAXException {
        int read = 0;
        for (RuleHeader header : RuleIndex.headers()) {
            RulePage page = RulePages.page(header.id()).orElseThrow();
            String html = RulePageHtml.of(page);
            String closed = html.replace("<!DOCTYPE html>", "").replaceAll("<meta ([^>]*)>", "<meta $1/>");
            String words = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new java.io.StringReader(closed.strip())))
                    .getDocumentElement().getTextContent();
            assertTrue(words.contains(page.bad()) && words.contains(page.good()) && words.contains(header.summary().replace("`", "")), header.id());
            page.prose().forEach(prose -> assertTrue(words.contains(prose.replace("`", "")), header.id() + ": " + prose));
            assertFalse(page.prose().stream().anyMatch(prose -> prose.matches("(?s)(.*\\n)?\\s*([-*#>|]|\\d+\\.) .*|.*(\\]\\(|\\*\\*).*")),
                    header.id() + " is written in more than words and code");
            read++;
        }
        assertTrue(read > 100, "only " + read + " pages were read");
    }

    @Test
    void should_show_words_that_look_like_markup_as_words() {
        RulePage page = new RulePage(RuleIndex.headers().get(0), List.of("Words <script>alert(\"x\")</script> & `a < b`", "<iframe src=\"x\"></iframe>",
                "[here](javascript:alert)"), "</code></pre><b>\n```\n# no heading", "");

        String html = RulePageHtml.of(page);

        assertFalse(html.contains("<script") || html.contains("<b>") || html.contains("<iframe") || html.contains("javascript:"), html);
        assertTrue(html.contains("<p>Words &lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; <code>a &lt; b</code></p>"), html);
        assertTrue(html.contains("&lt;/code&gt;&lt;/pre&gt;&lt;b&gt;\n```\n# no heading</code></pre>"), html);
    }
}

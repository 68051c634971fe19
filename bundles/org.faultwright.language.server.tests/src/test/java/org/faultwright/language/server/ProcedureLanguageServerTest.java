/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An editor of LSP4J's making talks to the server through two pipes, as a real one does through its streams. */
@Timeout(60)
class ProcedureLanguageServerTest {
    private static final String ADDRESS = Path.of("Fan.procedure").toAbsolutePath().toUri().toString();
    private static final String TEXT = """
            procedure Fan "Fan rattles"
            instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits }
            point P "TP1"
            begin at Listen
            check Listen "Does it rattle?" {
                yes -> Volts
                no  -> Quiet
            }
            measure Volts "Rail" {
                dc voltage at P using Meter
                expects 24 V +/- 5 %
                within  -> Quiet
                outside -> Quiet
            }
            conclude Quiet "Quiet" { finds nothing }
            """;

    private final Editor editor = new Editor();
    private CompletableFuture<Integer> served;
    private LanguageServer server;

    private static final class Editor implements LanguageClient {
        private final BlockingQueue<PublishDiagnosticsParams> told = new ArrayBlockingQueue<>(100);

        @Override
        public void publishDiagnostics(PublishDiagnosticsParams diagnostics) {
            told.add(diagnostics);
        }

        List<Diagnostic> next() throws InterruptedException {
            return told.poll(30, TimeUnit.SECONDS).getDiagnostics();
        }

        @Override
        public void telemetryEvent(Object object) {
            throw new AssertionError("nothing is counted");
        }

        @Override
        public void showMessage(MessageParams message) {
            throw new AssertionError(message.getMessage());
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
            throw new AssertionError(request.getMessage());
        }

        @Override
        public void logMessage(MessageParams message) {
            throw new AssertionError(message.getMessage());
        }
    }

    @BeforeEach
    void connect() throws IOException, ExecutionException, InterruptedException {
        Pipe toServerPipe = Pipe.open();
        Pipe toEditorPipe = Pipe.open();
        InputStream toServer = Channels.newInputStream(toServerPipe.source());
        InputStream toEditor = Channels.newInputStream(toEditorPipe.source());
        OutputStream fromEditor = Channels.newOutputStream(toServerPipe.sink());
        OutputStream fromServer = Channels.newOutputStream(toEditorPipe.sink());
        served = new CompletableFuture<>();
        daemon(() -> served.complete(ProcedureLanguageServer.serve(toServer, fromServer))).start();
        Launcher<LanguageServer> launcher = LSPLauncher.createClientLauncher(editor, toEditor, fromEditor,
                Executors.newCachedThreadPool(ProcedureLanguageServerTest::daemon), message -> message);
        launcher.startListening();
        server = launcher.getRemoteProxy();
        assertTrue(server.initialize(new InitializeParams()).get().getCapabilities().getHoverProvider().getLeft());
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(ADDRESS, "procedure", 1, TEXT)));
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "editor");
        thread.setDaemon(true);
        return thread;
    }

    @AfterEach
    void leave() throws ExecutionException, InterruptedException {
        if (!served.isDone()) {
            server.shutdown().get();
            server.exit();
        }
    }

    @Test
    void should_tell_what_it_finds_and_take_it_back() throws InterruptedException, ExecutionException {
        assertTrue(codes(editor.next()).stream().noneMatch("unknown-name"::equals));

        change(TEXT.replace("no  -> Quiet", "no  -> Quite"));
        Diagnostic unknown = editor.next().stream().filter(one -> one.getCode().getLeft().equals("unknown-name")).findFirst()
                .orElseThrow();

        assertEquals(new Range(new Position(6, 11), new Position(6, 16)), unknown.getRange());
        var fixes = server.getTextDocumentService().codeAction(new CodeActionParams(new TextDocumentIdentifier(ADDRESS),
                unknown.getRange(), new CodeActionContext(List.of(unknown)))).get();
        TextEdit edit = fixes.get(0).getRight().getEdit().getChanges().get(ADDRESS).get(0);
        assertEquals("Quiet", edit.getNewText());
        assertEquals(unknown.getRange(), edit.getRange());

        change(TEXT);
        assertTrue(codes(editor.next()).stream().noneMatch("unknown-name"::equals));
    }

    @Test
    void should_check_a_procedure_again_when_its_library_is_edited(@TempDir Path folder) throws IOException, InterruptedException {
        editor.next();
        String library = "library Bench \"Bench\" condition Supply { off, on } ";
        Files.writeString(folder.resolve("Bench.procedure"), library);
        open(folder.resolve("User.procedure"), "procedure User \"x\" uses Bench do On \"On\" { sets Supply on then -> End } "
                + "conclude End \"End\" { finds nothing }");
        assertTrue(codes(editor.next()).stream().noneMatch("unknown-name"::equals));

        open(folder.resolve("Bench.procedure"), library.replace("Supply", "Mains"));

        editor.next();
        assertTrue(codes(editor.next()).contains("unknown-name"));
    }

    private void open(Path file, String text) {
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(
                new TextDocumentItem(file.toUri().toString(), "procedure", 1, text)));
    }

    @Test
    void should_explain_a_limit_with_its_numbers() throws InterruptedException, ExecutionException {
        editor.next();
        var hover = server.getTextDocumentService().hover(new HoverParams(new TextDocumentIdentifier(ADDRESS), new Position(10, 13)))
                .get();

        // by hand: 0.5 % of 22.8 V + 2 x 10 mV = 0.134 V; JCGM 100:2008, 4.3.7
        assertTrue(hover.getContents().getRight().getValue().contains("134 mV"), hover.toString());
    }

    @Test
    void should_propose_steps_behind_an_arrow() throws InterruptedException, ExecutionException {
        editor.next();
        var items = server.getTextDocumentService().completion(new CompletionParams(new TextDocumentIdentifier(ADDRESS),
                new Position(6, 11))).get().getLeft();

        assertTrue(items.stream().anyMatch(item -> item.getLabel().equals("Quiet")), items.toString());
    }

    @Test
    void should_rename_every_use_and_refuse_a_word_of_the_language() throws InterruptedException, ExecutionException {
        editor.next();
        Position onVolts = new Position(8, 9);
        var edit = server.getTextDocumentService().rename(new RenameParams(new TextDocumentIdentifier(ADDRESS), onVolts, "RailVolts"))
                .get();
        assertEquals(2, edit.getChanges().get(ADDRESS).size());

        ExecutionException refused = org.junit.jupiter.api.Assertions.assertThrows(ExecutionException.class, () -> server
                .getTextDocumentService().rename(new RenameParams(new TextDocumentIdentifier(ADDRESS), onVolts, "measure")).get());
        assertTrue(refused.getMessage().contains("cannot be a name"), refused.getMessage());
    }

    @Test
    void should_list_the_parts() throws InterruptedException, ExecutionException {
        editor.next();
        var symbols = server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(new TextDocumentIdentifier(ADDRESS))).get();

        assertEquals(List.of("Meter", "P", "Listen", "Volts", "Quiet"),
                symbols.stream().map(symbol -> symbol.getRight().getName()).toList());
    }

    @Test
    void should_end_well_when_the_editor_says_goodbye() throws Exception {
        editor.next();
        server.shutdown().get();
        server.exit();

        assertEquals(0, served.get(30, TimeUnit.SECONDS));
    }

    @Test
    void should_refuse_what_it_never_offered_and_go_on() throws InterruptedException, ExecutionException {
        editor.next();
        ExecutionException refused = assertThrows(ExecutionException.class, () -> server.getTextDocumentService()
                .signatureHelp(new SignatureHelpParams(new TextDocumentIdentifier(ADDRESS), new Position(0, 0))).get());

        assertEquals(ResponseErrorCode.MethodNotFound.getValue(), ((ResponseErrorException) refused.getCause()).getResponseError().getCode());
        assertFalse(server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(new TextDocumentIdentifier(ADDRESS))).get().isEmpty());
    }

    /** Edits made piece by piece, in the order of the protocol, against the same text sent whole. */
    @Test
    void should_take_changes_piece_by_piece() throws InterruptedException, ExecutionException {
        editor.next();
        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(ADDRESS, 2), List.of(
                new TextDocumentContentChangeEvent(new Range(new Position(6, 11), new Position(6, 16)), "Quite"),
                new TextDocumentContentChangeEvent(new Range(new Position(6, 11), new Position(6, 13)), "Qui"),
                new TextDocumentContentChangeEvent(new Range(new Position(900, 0), new Position(901, 5)), "// end \uD83D\uDD27\n"))));

        assertTrue(codes(editor.next()).contains("unknown-name"), "Quiite");
        var folds = server.getTextDocumentService().foldingRange(new FoldingRangeRequestParams(new TextDocumentIdentifier(ADDRESS))).get();
        assertEquals(List.of("4-7", "8-13"), folds.stream().map(fold -> fold.getStartLine() + "-" + fold.getEndLine()).toList());

        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(ADDRESS, 3), List.of(
                new TextDocumentContentChangeEvent(new Range(new Position(6, 11), new Position(6, 17)), "Quiet"))));
        assertTrue(codes(editor.next()).stream().noneMatch("unknown-name"::equals));
    }

    @Test
    void should_colour_every_word_in_its_place() throws InterruptedException, ExecutionException {
        editor.next();
        List<Integer> data = server.getTextDocumentService().semanticTokensFull(new SemanticTokensParams(new TextDocumentIdentifier(ADDRESS)))
                .get().getData();
        List<String> types = server.initialize(new InitializeParams()).get().getCapabilities().getSemanticTokensProvider().getLegend().getTokenTypes();
        List<String> lines = TEXT.lines().toList();
        List<String> words = new ArrayList<>();
        int line = 0;
        int column = 0;
        for (int i = 0; i < data.size(); i += 5) {
            line += data.get(i);
            column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
            words.add(types.get(data.get(i + 3)) + " " + lines.get(line).substring(column, column + data.get(i + 2)));
        }

        assertTrue(words.containsAll(List.of("keyword procedure", "string \"Fan rattles\"", "operator ->", "keyword measure")), words.toString());
    }

    /** 24 V +/- 5 % is 22.8 V to 25.2 V, worked out by hand. */
    @Test
    void should_hint_at_the_ends_of_a_limit_and_at_where_an_arrow_leads() throws InterruptedException, ExecutionException {
        editor.next();
        List<InlayHint> hints = server.getTextDocumentService().inlayHint(new InlayHintParams(new TextDocumentIdentifier(ADDRESS),
                new Range(new Position(0, 0), new Position(99, 0)))).get();

        assertEquals(List.of("Rail", "Quiet", "22.8 V to 25.2 V", "Quiet", "Quiet"), hints.stream().map(hint -> hint.getLabel().getLeft()).toList());
        assertEquals(new Position(10, 24), hints.get(2).getPosition());
    }

    @Test
    void should_say_what_can_be_renamed_and_light_up_its_uses() throws InterruptedException, ExecutionException {
        editor.next();
        var onVolts = server.getTextDocumentService().prepareRename(new PrepareRenameParams(new TextDocumentIdentifier(ADDRESS), new Position(8, 9)))
                .get();
        assertEquals("Volts", onVolts.getSecond().getPlaceholder());
        assertNull(server.getTextDocumentService().prepareRename(new PrepareRenameParams(new TextDocumentIdentifier(ADDRESS), new Position(8, 2))).get());
        assertEquals(2, server.getTextDocumentService().documentHighlight(new DocumentHighlightParams(new TextDocumentIdentifier(ADDRESS),
                new Position(8, 9))).get().size());
    }

    @Test
    void should_find_names_over_the_open_folders(@TempDir Path folder) throws Exception {
        editor.next();
        Files.writeString(folder.resolve("One.procedure"), "procedure One \"x\" conclude Swapped \"New fan fitted\" { finds nothing }");
        Files.writeString(folder.resolve("Broken.procedure"), "procedure { \"\u0000 conclude");
        InitializeParams params = new InitializeParams();
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "bench"),
                new WorkspaceFolder(folder.resolve("gone").toUri().toString(), "gone")));
        server.initialize(params).get();

        var found = server.getWorkspaceService().symbol(new WorkspaceSymbolParams("new FAN")).get().getRight();
        assertEquals(List.of("Swapped"), found.stream().map(WorkspaceSymbol::getName).toList());
        assertTrue(server.getWorkspaceService().symbol(new WorkspaceSymbolParams("nothing of this kind")).get().getRight().isEmpty());
    }

    @Test
    void should_rename_a_name_of_a_library_in_every_text_that_uses_it(@TempDir Path folder) throws Exception {
        editor.next();
        String text = "procedure NAME \"x\" uses Bench do On \"On\" { sets Supply on then -> End } conclude End \"End\" { finds nothing }";
        Path open = Files.writeString(folder.resolve("Open.procedure"), text.replace("NAME", "Open"));
        Path closed = Files.writeString(folder.resolve("Closed.procedure"), text.replace("NAME", "Closed"));
        Files.writeString(folder.resolve("Other.procedure"), text.replace("NAME", "Other").replace("uses Bench", "condition Supply { off, on }"));
        Path library = Files.writeString(folder.resolve("Bench.procedure"), "library Bench \"Bench\" condition Supply { off, on } ");
        InitializeParams params = new InitializeParams();
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "bench")));
        server.initialize(params).get();
        open(open, Files.readString(open).replace("On \"On\"", "On \"Switch it on\""));
        editor.next();
        open(library, Files.readString(library));
        editor.next();
        TextDocumentIdentifier bench = new TextDocumentIdentifier(library.toUri().toString());

        var changes = server.getTextDocumentService().rename(new RenameParams(bench, new Position(0, 34), "Mains")).get().getChanges();
        assertEquals(Set.of(open.toUri().toString(), closed.toUri().toString(), library.toUri().toString()), changes.keySet());
        int unsaved = Files.readString(open).replace("On \"On\"", "On \"Switch it on\"").indexOf("Supply");
        assertEquals(new Position(0, unsaved), changes.get(open.toUri().toString()).get(0).getRange().getStart(), "as it stands in the editor");

        Files.writeString(closed, Files.readString(closed).replace("uses Bench", "uses Bench condition Mains { a, b }"));
        ExecutionException refused = org.junit.jupiter.api.Assertions.assertThrows(ExecutionException.class, () -> server
                .getTextDocumentService().rename(new RenameParams(bench, new Position(0, 34), "Mains")).get());
        assertTrue(refused.getMessage().contains("There is a condition \"Mains\" already."), refused.getMessage());
    }

    private static List<String> codes(List<Diagnostic> diagnostics) {
        return diagnostics.stream().map(one -> one.getCode().getLeft()).toList();
    }

    private void change(String text) {
        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(ADDRESS, 2), List.of(new TextDocumentContentChangeEvent(text))));
    }
}

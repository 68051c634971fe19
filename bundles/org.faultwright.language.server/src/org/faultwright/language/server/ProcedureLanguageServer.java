/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.PublishDiagnosticsCapabilities;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageClientAware;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.faultwright.language.kept.KeptPages;

/** The editing services for any editor that speaks the Language Server Protocol 3.17. */
public final class ProcedureLanguageServer implements LanguageServer, LanguageClientAware, WorkspaceService {
    private final WorkspaceFiles files = new WorkspaceFiles();
    private final ServedTexts texts = new ServedTexts(new EditingServices(), files);
    private final CompletableFuture<Integer> ended = new CompletableFuture<>();
    private final KeptPages pages;
    private volatile boolean shutDown;

    /** @param pages where the pages of rules are written, which an editor is given links to */
    ProcedureLanguageServer(KeptPages pages) {
        this.pages = pages;
    }

    /**
     * Serves one editor until it says goodbye or the stream ends.
     *
     * @return 0 when it said goodbye as the protocol asks, else 1
     */
    public static int serve(InputStream in, OutputStream out) {
        ProcedureLanguageServer server = new ProcedureLanguageServer(KeptPages.ofTheUser());
        ExecutorService threads = Executors.newCachedThreadPool(ProcedureLanguageServer::daemon);
        try {
            Launcher<LanguageClient> launcher = new LSPLauncher.Builder<LanguageClient>().setLocalService(server).setRemoteInterface(LanguageClient.class)
                    .setInput(in).setOutput(out).setExecutorService(threads).wrapMessages(message -> message)
                    .setExceptionHandler(ProcedureLanguageServer::refused).create();
            server.connect(launcher.getRemoteProxy());
            Future<Void> listening = launcher.startListening();
            threads.execute(() -> server.endWith(listening));
            int status = server.ended.join();
            listening.cancel(true);
            return status;
        } finally {
            threads.shutdownNow();
        }
    }

    /** What is asked for and was never offered is no fault of the server: it is refused as the protocol says, and nothing is logged. */
    private static ResponseError refused(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof UnsupportedOperationException) {
                return new ResponseError(ResponseErrorCode.MethodNotFound, "The server does not offer this; what it offers it says when it is initialized.", null);
            }
        }
        return RemoteEndpoint.DEFAULT_EXCEPTION_HANDLER.apply(failure);
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "language server");
        thread.setDaemon(true);
        return thread;
    }

    /** When the stream ends without a goodbye. */
    private void endWith(Future<Void> listening) {
        try {
            listening.get();
            ended.complete(shutDown ? 0 : 1);
        } catch (InterruptedException | ExecutionException | CancellationException broken) {
            ended.complete(1);
        }
    }

    @Override
    public void connect(LanguageClient client) {
        texts.connect(client);
    }

    @Override
    public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
        files.open(folders(params));
        texts.link(opensLinks(params.getCapabilities()) ? new RuleLinks(pages) : RuleLinks.NONE);
        ServerCapabilities able = new ServerCapabilities();
        able.setTextDocumentSync(TextDocumentSyncKind.Incremental);
        able.setCompletionProvider(new CompletionOptions(false, List.of(">")));
        able.setHoverProvider(true);
        able.setDefinitionProvider(true);
        able.setReferencesProvider(true);
        able.setDocumentSymbolProvider(true);
        able.setDocumentHighlightProvider(true);
        able.setFoldingRangeProvider(true);
        able.setInlayHintProvider(true);
        able.setWorkspaceSymbolProvider(true);
        able.setSemanticTokensProvider(new SemanticTokensWithRegistrationOptions(SemanticColours.legend(), true));
        able.setRenameProvider(new RenameOptions(true));
        able.setDocumentFormattingProvider(true);
        able.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix)));
        return CompletableFuture.completedFuture(new InitializeResult(able, new ServerInfo("Faultwright")));
    }

    /** Whether the editor says that it opens what a finding's rule is linked to (LSP 3.17, PublishDiagnosticsClientCapabilities). */
    private static boolean opensLinks(ClientCapabilities editor) {
        return Optional.ofNullable(editor).map(ClientCapabilities::getTextDocument).map(TextDocumentClientCapabilities::getPublishDiagnostics)
                .map(PublishDiagnosticsCapabilities::getCodeDescriptionSupport).orElse(false);
    }

    private static List<Path> folders(InitializeParams params) {
        return Optional.ofNullable(params.getWorkspaceFolders()).orElse(List.of()).stream()
                .map(folder -> Path.of(ProtocolPositions.path(folder.getUri()))).toList();
    }

    @Override
    public CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>> symbol(WorkspaceSymbolParams params) {
        return CompletableFutures.computeAsync(cancel -> {
            cancel.checkCanceled();
            return Either.forRight(files.named(params.getQuery()));
        });
    }

    @Override
    public CompletableFuture<Object> shutdown() {
        shutDown = true;
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void exit() {
        texts.closeAll();
        ended.complete(shutDown ? 0 : 1);
    }

    @Override
    public TextDocumentService getTextDocumentService() {
        return texts;
    }

    @Override
    public WorkspaceService getWorkspaceService() {
        return this;
    }

    @Override
    public void didChangeConfiguration(DidChangeConfigurationParams params) {
        // there is nothing to configure
    }

    @Override
    public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
        texts.checkAll();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.TextFormatter;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceText;

/** Passes the answers of the editing services on to an editor. */
final class ServedTexts implements TextDocumentService {
    private static final int MILLISECONDS_OF_PAUSE = 700;

    private final EditingServices services;
    private final WorkspaceFiles files;
    private final Map<String, OpenText> open = new ConcurrentHashMap<>();
    private final Map<String, Future<?>> pauses = new ConcurrentHashMap<>();
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(ServedTexts::daemon);
    private volatile LanguageClient client;
    private volatile RuleLinks links = RuleLinks.NONE;

    ServedTexts(EditingServices services, WorkspaceFiles files) {
        this.services = services;
        this.files = files;
    }

    void connect(LanguageClient connected) {
        client = connected;
    }

    void link(RuleLinks toPages) {
        links = toPages;
    }

    @Override
    public void didOpen(DidOpenTextDocumentParams params) {
        check(params.getTextDocument().getUri(), params.getTextDocument().getText());
    }

    @Override
    public void didChange(DidChangeTextDocumentParams params) {
        String address = params.getTextDocument().getUri();
        String content = Optional.ofNullable(open.get(address)).map(OpenText::content).orElse("");
        for (TextDocumentContentChangeEvent change : params.getContentChanges()) {
            content = changed(content, change);
        }
        check(address, content);
    }

    /** A change without a range is the whole text; a range behind the end is the end. */
    private static String changed(String content, TextDocumentContentChangeEvent change) {
        if (change.getRange() == null) {
            return change.getText();
        }
        SourceText text = new SourceText("", content);
        int from = ProtocolPositions.offset(text, change.getRange().getStart());
        int to = Math.max(from, ProtocolPositions.offset(text, change.getRange().getEnd()));
        return content.substring(0, from) + change.getText() + content.substring(to);
    }

    @Override
    public void didClose(DidCloseTextDocumentParams params) {
        String address = params.getTextDocument().getUri();
        open.remove(address);
        Optional.ofNullable(pauses.remove(address)).ifPresent(pause -> pause.cancel(false));
        services.close(ProtocolPositions.path(address));
        client.publishDiagnostics(new PublishDiagnosticsParams(address, List.of()));
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "pause in writing");
        thread.setDaemon(true);
        return thread;
    }

    /** Once nobody has written for a moment, everything is told, also what takes longer to find. */
    private void inAPause(String address, OpenText text) {
        Future<?> earlier = pauses.put(address, clock.schedule(() -> {
            if (open.get(address) == text) {
                OpenText more = services.withEveryRule(text);
                if (open.replace(address, text, more) && !more.findings().equals(text.findings())) {
                    publish(address, more);
                }
            }
        }, MILLISECONDS_OF_PAUSE, TimeUnit.MILLISECONDS));
        if (earlier != null) {
            earlier.cancel(false);
        }
    }

    @Override
    public void didSave(DidSaveTextDocumentParams params) {
        checkAll();
    }

    void checkAll() {
        open.forEach((address, text) -> tell(address,
                services.withEveryRule(services.update(ProtocolPositions.path(address), text.content()))));
    }

    void closeAll() {
        clock.shutdownNow();
        open.keySet().forEach(address -> services.close(ProtocolPositions.path(address)));
        open.clear();
    }

    private void check(String address, String content) {
        OpenText text = services.update(ProtocolPositions.path(address), content);
        tell(address, text);
        inAPause(address, text);
        open.forEach((other, user) -> {
            if (user.uses(text)) {
                tell(other, services.update(ProtocolPositions.path(other), user.content()));
            }
        });
    }

    private void tell(String address, OpenText text) {
        open.put(address, text);
        publish(address, text);
    }

    private void publish(String address, OpenText text) {
        client.publishDiagnostics(new PublishDiagnosticsParams(address,
                text.findings().stream().map(finding -> ProtocolForms.diagnostic(finding, links)).toList()));
    }

    @Override
    public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams params) {
        return answer(params.getTextDocument().getUri(), Either.forLeft(List.of()), text -> Either.forLeft(
                Proposals.at(text, ProtocolPositions.offset(text.source(), params.getPosition())).stream()
                        .map(proposal -> ProtocolForms.completion(text, proposal)).toList()));
    }

    @Override
    public CompletableFuture<Hover> hover(HoverParams params) {
        return answer(params.getTextDocument().getUri(), null, text -> Explanations
                .at(text, ProtocolPositions.offset(text.source(), params.getPosition())).map(ProtocolForms::hover).orElse(null));
    }

    @Override
    public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(
            DefinitionParams params) {
        return answer(params.getTextDocument().getUri(), Either.forLeft(List.of()), text -> Either.forLeft(
                text.nameAt(ProtocolPositions.offset(text.source(), params.getPosition())).flatMap(NameInText::declared)
                        .map(Name::at).map(ProtocolPositions::location).stream().toList()));
    }

    @Override
    public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
        return answer(params.getTextDocument().getUri(), List.of(), text -> text
                .nameAt(ProtocolPositions.offset(text.source(), params.getPosition())).map(NameInText::uses).orElseGet(List::of)
                .stream().map(ProtocolPositions::location).toList());
    }

    @Override
    public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(DocumentSymbolParams params) {
        return answer(params.getTextDocument().getUri(), List.of(), text -> Outline.of(text.document()).stream()
                .map(ProtocolForms::symbol).map(Either::<SymbolInformation, DocumentSymbol>forRight).toList());
    }

    @Override
    public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(DocumentHighlightParams params) {
        return answer(params.getTextDocument().getUri(), List.of(), text -> text
                .nameAt(ProtocolPositions.offset(text.source(), params.getPosition())).map(NameInText::uses).orElseGet(List::of).stream()
                .map(use -> new DocumentHighlight(ProtocolPositions.range(use))).toList());
    }

    @Override
    public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
        return answer(params.getTextDocument().getUri(), List.of(), text -> Outline.of(text.document()).stream()
                .flatMap(ProtocolForms::folds).toList());
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
        return answer(params.getTextDocument().getUri(), new SemanticTokens(List.of()), text -> SemanticColours.of(text.source()));
    }

    @Override
    public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
        return answer(params.getTextDocument().getUri(), List.of(), text -> InlineHints.between(text,
                ProtocolPositions.offset(text.source(), params.getRange().getStart()), ProtocolPositions.offset(text.source(), params.getRange().getEnd()))
                .stream().map(hint -> ProtocolForms.hint(text, hint)).toList());
    }

    /** A place that cannot be renamed is refused before anybody types a new name. */
    @Override
    public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>> prepareRename(PrepareRenameParams params) {
        return answer(params.getTextDocument().getUri(), null, text -> {
            int offset = ProtocolPositions.offset(text.source(), params.getPosition());
            return text.nameAt(offset).filter(name -> name.declared().filter(declared -> declared.at().source().name().equals(text.source().name()))
                    .isPresent()).map(name -> Either3.<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>forSecond(
                            new PrepareRenameResult(ProtocolPositions.range(name.name().at()), name.name().text()))).orElse(null);
        });
    }

    @Override
    public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
        return answer(params.getTextDocument().getUri(), null, text -> {
            int offset = ProtocolPositions.offset(text.source(), params.getPosition());
            Optional<String> refused = Renaming.refusal(text, offset, params.getNewName());
            if (refused.isPresent()) {
                throw new ResponseErrorException(
                        new ResponseError(ResponseErrorCode.InvalidParams, refused.get(), null));
            }
            Map<String, List<TextEdit>> changes = new LinkedHashMap<>(
                    ProtocolForms.edit(params.getTextDocument().getUri(), Renaming.rename(text, offset, params.getNewName())).getChanges());
            NameInText name = text.nameAt(offset).orElseThrow();
            for (OpenText user : text.document() instanceof Library ? users(text) : List.<OpenText>of()) {
                Renaming.taken(user, name, params.getNewName()).ifPresent(taken -> {
                    throw new ResponseErrorException(new ResponseError(ResponseErrorCode.InvalidParams, user.source().name() + ": " + taken, null));
                });
                List<TextEdit> edits = Renaming.edits(user, name.declared().orElseThrow(), params.getNewName()).stream()
                        .map(edit -> new TextEdit(ProtocolPositions.range(edit.at()), edit.replacement())).toList();
                if (!edits.isEmpty()) {
                    changes.put(ProtocolPositions.address(user.source().name()), edits);
                }
            }
            return new WorkspaceEdit(changes);
        });
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
        return answer(params.getTextDocument().getUri(), List.of(), text -> {
            String even = TextFormatter.format(text.content());
            return even.equals(text.content()) ? List.of() : List.of(ProtocolForms.whole(text.source(), even));
        });
    }

    @Override
    public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
        String address = params.getTextDocument().getUri();
        return answer(address, List.of(), text -> {
            int offset = ProtocolPositions.offset(text.source(), params.getRange().getStart());
            List<Either<Command, CodeAction>> actions = new ArrayList<>();
            text.findingsAt(offset).forEach(finding -> services.fixes(finding)
                    .forEach(fix -> actions.add(Either.forRight(ProtocolForms.action(address, finding, fix, links)))));
            return actions;
        });
    }

    /** The texts that use a library: as they stand in the editor where they are open, else as they are on disk. */
    private List<OpenText> users(OpenText library) {
        List<OpenText> users = new ArrayList<>(open.values().stream().filter(text -> text.uses(library)).toList());
        ProcedureReader onDisk = ProcedureReader.overFiles();
        Set<String> seen = open.values().stream().map(text -> text.source().name()).collect(Collectors.toSet());
        for (Path file : files.all()) {
            if (!seen.contains(file.toString())) {
                try {
                    SourceText text = onDisk.read(file).source();
                    if (text.content().contains(library.document().name().text())) {
                        Optional.of(services.readQuickly(text)).filter(user -> user.uses(library)).ifPresent(users::add);
                    }
                } catch (IOException unreadable) {
                    continue;
                }
            }
        }
        return users;
    }

    private <T> CompletableFuture<T> answer(String address, T none, Function<OpenText, T> compute) {
        OpenText text = open.get(address);
        return text == null ? CompletableFuture.completedFuture(none) : CompletableFutures.computeAsync(cancel -> {
            cancel.checkCanceled();
            T found = compute.apply(text);
            cancel.checkCanceled();
            return found;
        });
    }
}

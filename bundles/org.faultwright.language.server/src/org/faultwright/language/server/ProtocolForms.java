/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticCodeDescription;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.ThingKind;

/** Our answers in the protocol's words. */
final class ProtocolForms {
    private ProtocolForms() {
    }

    /** @param links to the pages of rules, as far as the editor opens them (LSP 3.17, CodeDescription) */
    static Diagnostic diagnostic(Finding finding, RuleLinks links) {
        String path = finding.path().isEmpty() ? "" : "\nPath: "
                + finding.path().stream().map(PathStep::toString).collect(Collectors.joining(" > "));
        Diagnostic diagnostic = new Diagnostic(ProtocolPositions.range(finding.at()),
                finding.message() + "\n" + finding.advice() + path, severity(finding), "faultwright");
        diagnostic.setCode(finding.rule());
        links.to(finding.rule()).map(DiagnosticCodeDescription::new).ifPresent(diagnostic::setCodeDescription);
        return diagnostic;
    }

    private static DiagnosticSeverity severity(Finding finding) {
        return switch (finding.severity()) {
            case ERROR -> DiagnosticSeverity.Error;
            case WARNING -> DiagnosticSeverity.Warning;
            case ADVICE -> DiagnosticSeverity.Information;
        };
    }

    static CompletionItem completion(OpenText text, Proposal proposal) {
        CompletionItem item = new CompletionItem(proposal.label());
        item.setDetail(proposal.detail());
        item.setKind(proposal.insert().contains("${") ? CompletionItemKind.Snippet
                : proposal.kind() == ThingKind.UNIT ? CompletionItemKind.Unit : CompletionItemKind.Text);
        item.setInsertTextFormat(proposal.insert().contains("${") ? InsertTextFormat.Snippet : InsertTextFormat.PlainText);
        item.setTextEdit(Either.forLeft(new TextEdit(new Range(ProtocolPositions.position(text.source(), proposal.from()),
                ProtocolPositions.position(text.source(), proposal.to())), proposal.insert())));
        return item;
    }

    static Hover hover(Explanation explanation) {
        return new Hover(new MarkupContent(MarkupKind.MARKDOWN, explanation.markdown()),
                ProtocolPositions.range(explanation.at()));
    }

    static DocumentSymbol symbol(OutlineItem item) {
        return new DocumentSymbol(item.label(), kind(item), ProtocolPositions.range(item.at()), ProtocolPositions.range(item.nameAt()),
                item.detail(), item.children().stream().map(ProtocolForms::symbol).toList());
    }

    static SymbolKind kind(OutlineItem item) {
        return switch (item.kind()) {
            case CONDITION, SET_UP, INSTRUMENT, POINT, PART, INDICATOR -> SymbolKind.Object;
            case NOTE, EXAMPLE -> SymbolKind.String;
            case FAULT -> SymbolKind.Event;
            default -> SymbolKind.Function;
        };
    }

    /** What can be folded: whatever of the outline takes more than one line. */
    static Stream<FoldingRange> folds(OutlineItem item) {
        int first = item.at().line() - 1;
        int last = item.at().source().line(item.at().end()) - 1;
        Stream<FoldingRange> inner = item.children().stream().flatMap(ProtocolForms::folds);
        return last > first ? Stream.concat(Stream.of(new FoldingRange(first, last)), inner) : inner;
    }

    static InlayHint hint(OpenText text, InlineHints.Hint hint) {
        InlayHint shown = new InlayHint(ProtocolPositions.position(text.source(), hint.offset()), Either.forLeft(hint.text()));
        shown.setPaddingLeft(true);
        return shown;
    }

    static CodeAction action(String address, Finding finding, Fix fix, RuleLinks links) {
        CodeAction action = new CodeAction(fix.title());
        action.setKind(CodeActionKind.QuickFix);
        action.setDiagnostics(List.of(diagnostic(finding, links)));
        action.setEdit(edit(address, fix));
        return action;
    }

    static WorkspaceEdit edit(String address, Fix fix) {
        return new WorkspaceEdit(Map.of(address, fix.edits().stream()
                .map(edit -> new TextEdit(ProtocolPositions.range(edit.at()), edit.replacement())).toList()));
    }

    static TextEdit whole(SourceText source, String content) {
        return new TextEdit(new Range(ProtocolPositions.position(source, 0),
                ProtocolPositions.position(source, source.content().length())), content);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.*;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.faultwright.language.text.DocumentText;
import org.faultwright.language.text.ExampleText;
import org.faultwright.language.text.FaultText;
import org.faultwright.language.text.LibraryText;
import org.faultwright.language.text.ProcedureText;
import org.faultwright.language.text.VariationText;
import org.faultwright.procedure.DamagedBlock;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Written;

/** Turns a parsed text into a document, each part pointing back at its words. Its libraries are not yet in it. */
public final class Translator {
    private final SourceText source;
    private final Translators parts;
    private final ModelSource passage;
    private final HeadTranslator record;
    private final IntFunction<Optional<DamagedBlock>> blocks;

    private Translator(SourceText source, Map<INode, Integer> starts, Map<EObject, Integer> elements, KeptTranslations before, IntFunction<Optional<DamagedBlock>> blocks) {
        this.source = source;
        this.blocks = blocks;
        parts = new Translators(source, starts, elements, before);
        passage = parts.passage;
        record = new HeadTranslator(parts);
    }

    /**
     * What was read, and whether all of it could be.
     *
     * @param clean whether every word fits; what it means may still be wrong
     * @param kept  for the next translation after a change
     */
    public record Translated(Document document, boolean clean, KeptTranslations kept) {
    }

    /**
     * A text that was parsed as a whole.
     *
     * @param blocks finds the block that an offset lies in
     */
    public static Translated translate(SourceText source, IParseResult parsed, IntFunction<Optional<DamagedBlock>> blocks) {
        Translator translator = new Translator(source, Map.of(), Map.of(), KeptTranslations.NONE, blocks);
        translator.undecoded();
        for (INode error : parsed.getSyntaxErrors()) {
            SyntaxProblem.report(translator.passage, error);
        }
        return translator.document(parsed.getRootASTElement(), Optional.empty());
    }

    /** A text that was parsed block by block. @param before what blocks that are parsed as they were had been translated into */
    public static Translated translate(SourceText source, AssembledText text, KeptTranslations before, IntFunction<Optional<DamagedBlock>> blocks) {
        Translator translator = new Translator(source, text.starts(), text.blocks(), before, blocks);
        translator.undecoded();
        text.errors().forEach(error -> SyntaxProblem.report(translator.passage, error.error(), error.next(), blocks));
        text.nothing().forEach(translator.parts.unread::block);
        text.refused().forEach(problem -> translator.passage.unreadable(problem.at(), problem.message()));
        return translator.document(text.document(), Optional.of(text.at()));
    }

    private void undecoded() {
        int undecoded = source.content().indexOf('\uFFFD');
        if (undecoded >= 0) {
            passage.problem(new SourceRange(source, undecoded, 1),
                    "From here on the file is not in UTF-8; save it as UTF-8 and check this place.");
        }
    }

    private Translated document(EObject root, Optional<SourceRange> at) {
        Document read = root instanceof LibraryText library ? library(library, at)
                : root instanceof ProcedureText procedure ? procedure(procedure, at)
                : nothing(source, ProblemList.inReadingOrder(passage, blocks));
        return new Translated(read, passage.unreadable().isEmpty(), parts.kept.now());
    }

    /** What there is when neither a library nor a procedure can be made out: a procedure without a name or a step. */
    public static Procedure nothing(SourceText source, List<ReadingProblem> problems) {
        SourceRange start = new SourceRange(source, 0, 0);
        return new Procedure(source, new Name("", start), "", List.of(), List.of(), Optional.empty(), Optional.empty(),
                List.of(), List.of(), Declarations.NONE, Optional.empty(), Optional.empty(), Optional.empty(), List.of(), Optional.empty(), List.of(), List.of(),
                List.copyOf(problems), start);
    }

    private Library library(LibraryText written, Optional<SourceRange> at) {
        parts.unread.betweenDeclarations(written, DOCUMENT_TEXT__UNREAD);
        return new Library(source, name(written), title(written), uses(written), List.of(),
                parts.declarations.all(written.getDeclarations(), written.getAmbient()), record.decisionRule(written.getDecisionRules()),
                closesBy(written), ProblemList.inReadingOrder(passage, blocks), at.orElseGet(() -> passage.range(written)));
    }

    private Procedure procedure(ProcedureText written, Optional<SourceRange> at) {
        parts.unread.betweenDeclarations(written, DOCUMENT_TEXT__UNREAD);
        Procedure read = new Procedure(source, name(written), title(written), uses(written), List.of(),
                record.equipment(written.getEquipment()), record.revision(written.getRevisions()), complaints(written),
                tools(written), parts.declarations.all(written.getDeclarations(), written.getAmbient()), record.decisionRule(written.getDecisionRules()),
                closesBy(written), elsewhere(written), written.getFaults().stream().map(fault -> parts.kept.of(fault, () -> fault(fault))).toList(), parts.declarations.begin(written.getBegins()),
                parts.steps.all(written.getSteps()), written.getExamples().stream().flatMap(example -> parts.kept.of(example, () -> examples(example).toList()).stream()).toList(), List.of(),
                at.orElseGet(() -> passage.range(written)));
        return read.withProblems(ProblemList.inReadingOrder(passage, blocks));
    }

    private Optional<Name> closesBy(DocumentText written) {
        return passage.single(written.getClosings(), "The routine that closes the unit")
                .flatMap(closes -> passage.name(closes, CLOSES_TEXT__ROUTINE));
    }

    private Optional<Name> elsewhere(ProcedureText written) {
        return passage.single(written.getOtherwise(), "Where outcomes lead that a step does not name")
                .flatMap(otherwise -> passage.name(otherwise, OTHERWISE_TEXT__STEP));
    }

    private Name name(DocumentText written) {
        return passage.nameOrNone(written, NAMED_TEXT__NAME);
    }

    private String title(DocumentText written) {
        return passage.textOrNone(written, DOCUMENT_TEXT__TITLE);
    }

    private List<Name> uses(DocumentText written) {
        return written.getUses().stream().flatMap(uses -> passage.names(uses, USES_TEXT__LIBRARIES).stream()).toList();
    }

    private List<Written<String>> complaints(ProcedureText written) {
        return written.getComplaints().stream()
                .flatMap(text -> passage.texts(text, COMPLAINTS_TEXT__COMPLAINTS).stream()).toList();
    }

    private List<Written<String>> tools(ProcedureText written) {
        return written.getTools().stream().flatMap(text -> passage.texts(text, TOOLS_TEXT__TOOLS).stream()).toList();
    }

    private Fault fault(FaultText written) {
        parts.unread.withinBraces(written, FAULT_TEXT__UNREAD);
        return new Fault(passage.nameOrNone(written, NAMED_TEXT__NAME),
                passage.textOrNone(written, DECLARATION_TEXT__TITLE),
                passage.single(written, FAULT_TEXT__CASES, "The cases of this fault")
                        .map(node -> new Written<>(parts.quantities.number(node), passage.range(node))),
                parts.showings.all(written.getShows()), passage.names(written, FAULT_TEXT__REMEDIES),
                parts.vocabulary.hazards(written, FAULT_TEXT__HAZARDS),
                passage.single(written, FAULT_TEXT__REPORT, "The report").map(passage::text), passage.range(written));
    }

    /** The example, and behind it its variations. */
    private Stream<Example> examples(ExampleText written) {
        Example around = example(written, "");
        return Stream.concat(Stream.of(around), written.getVariations().stream().map(variation -> example(variation, around.title().text())));
    }

    /** @param around the title of the example that it stands in */
    private Example example(ExampleText written, String around) {
        boolean variation = written instanceof VariationText;
        Optional<Name> title = passage.name(written, EXAMPLE_TEXT__TITLE);
        Example read = new Example(variation, title.orElseGet(() -> new Name("", passage.behind(written))),
                passage.name(written, EXAMPLE_TEXT__FAULT), parts.showings.all(written.getShows()),
                passage.name(written, EXAMPLE_TEXT__ENDS_AT), parts.quantities.quantity(written.getWithin()),
                passage.range(written));
        if (title.isPresent()) {
            return read;
        }
        SourceRange keyword = new SourceRange(source, read.at().offset(), (variation ? "but" : "example").length());
        if (variation ? !read.differs() : read.of().isEmpty()) {
            passage.problem(keyword, variation ? "This \"but\" does not say what differs. Write a step and what it shows behind it, or take it out."
                    : "An example needs a title, or \"of\" and the fault that it is a case of.");
        }
        return read.titledBy(around, keyword);
    }
}

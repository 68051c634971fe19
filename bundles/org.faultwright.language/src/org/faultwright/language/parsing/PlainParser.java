/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import com.google.inject.Provider;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import org.apache.log4j.Level;
import org.apache.log4j.Logger;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.ResourceSet;
import org.eclipse.emf.ecore.resource.impl.ResourceSetImpl;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.XtextPackage;
import org.eclipse.xtext.nodemodel.impl.NodeModelBuilder;
import org.eclipse.xtext.parser.DefaultEcoreElementFactory;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.ParseException;
import org.eclipse.xtext.parser.antlr.AbstractInternalAntlrParser;
import org.eclipse.xtext.parser.antlr.AntlrTokenDefProvider;
import org.eclipse.xtext.parser.antlr.AntlrTokenToStringConverter;
import org.eclipse.xtext.parser.antlr.IUnorderedGroupHelper;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.resource.impl.BinaryGrammarResourceFactoryImpl;
import org.eclipse.xtext.service.AllRulesCache;
import org.eclipse.xtext.service.GrammarProvider;
import org.faultwright.language.parser.antlr.ProcedureAntlrTokenFileProvider;
import org.faultwright.language.parser.antlr.ProcedureParser;
import org.faultwright.language.parser.antlr.internal.InternalProcedureLexer;
import org.faultwright.language.services.ProcedureGrammarAccess;
import org.faultwright.language.text.TextPackage;

/**
 * The generated parser, put together by hand. Checking needs neither a resource set nor an injector,
 * and building those takes longer than reading a procedure.
 */
public final class PlainParser {
    private static final String GRAMMAR = "org.faultwright.language.Procedure";

    static {
        // It times every text it reads; where nobody has set logging up, that ends in a warning on standard error.
        Logger.getLogger(AbstractInternalAntlrParser.class).setLevel(Level.WARN);
    }

    private final ProcedureParser parser = new Assembled();

    /** Holds the one grammar, loaded when it is first needed. */
    private static final class Loaded {
        static final ProcedureGrammarAccess GRAMMAR_ACCESS = new ProcedureGrammarAccess(new FromClassPath());
    }

    private static final class FromClassPath extends GrammarProvider {
        FromClassPath() {
            super(GRAMMAR, new ResourceSets());
        }

        @Override
        public Grammar getGrammar(Object requestor) {
            ResourceSet resources = new ResourceSetImpl();
            resources.getPackageRegistry().put(XtextPackage.eNS_URI, XtextPackage.eINSTANCE);
            resources.getPackageRegistry().put(TextPackage.eNS_URI, TextPackage.eINSTANCE);
            Resource resource = new BinaryGrammarResourceFactoryImpl()
                    .createResource(URI.createURI("classpath:/" + GRAMMAR.replace('.', '/') + ".xtextbin"));
            resources.getResources().add(resource);
            try (InputStream grammar = ProcedureParser.class.getResourceAsStream("/" + GRAMMAR.replace('.', '/') + ".xtextbin")) {
                resource.load(grammar, null);
            } catch (IOException missing) {
                throw new UncheckedIOException("the grammar is missing from the class path", missing);
            }
            Grammar read = (Grammar) resource.getContents().get(0);
            // or each parser looks for all rules of the grammar anew
            new AllRulesCache(read).attachToEmfObject(read);
            return read;
        }
    }

    private static final class ResourceSets implements Provider<XtextResourceSet> {
        @Override
        public XtextResourceSet get() {
            return new XtextResourceSet();
        }
    }

    /** A class rather than a method reference: to resolve that would link the lexer and keep it out of a class-data archive. */
    private static final class Lexers implements Provider<Lexer> {
        @Override
        public Lexer get() {
            return new InternalProcedureLexer();
        }
    }

    private static final class NoGroups implements Provider<IUnorderedGroupHelper> {
        @Override
        public IUnorderedGroupHelper get() {
            return new IUnorderedGroupHelper.Null();
        }
    }

    private static final class Elements extends DefaultEcoreElementFactory {
        private final AntlrTokenToStringConverter tokens = new AntlrTokenToStringConverter();

        @Override
        protected Object getTokenAsStringIfPossible(Object token) {
            return tokens.getTokenAsStringIfPossible(token);
        }
    }

    private static final class Assembled extends ProcedureParser {
        Assembled() {
            DefaultEcoreElementFactory elements = new Elements();
            elements.setConverterService(new TextValues());
            AntlrTokenDefProvider tokens = new AntlrTokenDefProvider();
            tokens.setAntlrTokenFileProvider(new ProcedureAntlrTokenFileProvider());
            setElementFactory(elements);
            setTokenDefProvider(tokens);
            setLexerProvider(new Lexers());
            setUnorderedGroupHelper(new NoGroups());
            setSyntaxErrorProvider(new SyntaxMessages());
            setGrammarAccess(Loaded.GRAMMAR_ACCESS);
        }

        @Override
        protected NodeModelBuilder createNodeModelBuilder() {
            return new NodeModelBuilder();
        }
    }

    /** @throws StackOverflowError if the text nests too deeply */
    public IParseResult parse(String text) {
        try {
            return parser.parse(new StringReader(new MissingTargets(PlainSigns.of(text)).filled()));
        } catch (ParseException wrapped) {
            throw unwrapped(wrapped);
        }
    }

    /** The parser wraps whatever stops it several times over. */
    private static ParseException unwrapped(ParseException wrapped) {
        for (Throwable cause = wrapped; cause != null; cause = cause.getCause()) {
            if (cause instanceof StackOverflowError tooDeep) {
                throw tooDeep;
            }
        }
        return wrapped;
    }
}

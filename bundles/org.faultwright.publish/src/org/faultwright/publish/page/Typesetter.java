/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.apache.fop.apps.FOUserAgent;
import org.apache.fop.apps.FopFactory;
import org.apache.fop.apps.FopFactoryBuilder;
import org.apache.fop.apps.io.ResourceResolverFactory;
import org.apache.fop.configuration.ConfigurationException;
import org.apache.fop.configuration.DefaultConfigurationBuilder;
import org.apache.xmlgraphics.io.Resource;
import org.apache.xmlgraphics.io.ResourceResolver;
import org.apache.xmlgraphics.util.MimeConstants;
import org.xml.sax.ContentHandler;
import org.xml.sax.SAXException;

/** Sets formatting objects in type. A sheet is made of what it holds: nothing is fetched from anywhere. */
final class Typesetter {
    private static final URI HERE = URI.create("sheet:/");
    private static final String REGULAR = "regular.ttf";
    private static final String BOLD = "bold.ttf";
    /** Advanced typography is off: who searches a card for "fitted" shall find it, and it prints sooner. */
    private static final String SETTINGS = """
            <fop version="1.0"><accessibility>%s</accessibility><complex-scripts disabled="true"/><strict-configuration>true</strict-configuration>
            <renderers><renderer mime="application/pdf">%s<fonts>
            <font embed-url="%s" kerning="no" advanced="no"><font-triplet name="%s" style="normal" weight="normal"/></font>
            <font embed-url="%s" kerning="no" advanced="no"><font-triplet name="%s" style="normal" weight="bold"/></font>
            </fonts></renderer></renderers></fop>
            """;

    /** What the pages are for. They look the same. */
    enum Use {
        /** PDF/A-2a and PDF/UA-1. */
        KEPT("true", "<pdf-a-mode>PDF/A-2a</pdf-a-mode><pdf-ua-mode>PDF/UA-1</pdf-ua-mode>"),
        /** Drawn on a screen and thrown away: nothing is tagged, which takes as long as setting the type, and nothing packed. */
        LOOKED_AT("false", "<filterList><value>null</value></filterList><filterList type=\"image\"><value>flate</value></filterList>");

        private final String settings;
        /** A factory reads its settings at every sheet out of a document that is made for one thread: each is used by one at a time. */
        private final Queue<FopFactory> idle = new ConcurrentLinkedQueue<>();

        Use(String tagged, String modes) {
            this.settings = SETTINGS.formatted(tagged, modes, REGULAR, PrintFonts.FAMILY, BOLD, PrintFonts.FAMILY);
        }

        private FopFactory taken() {
            return Optional.ofNullable(idle.poll()).orElseGet(() -> factory(settings));
        }
    }

    private Typesetter() {
    }

    private static FopFactory factory(String settings) {
        // Its remarks are about our own formatting and would reach a user's console.
        java.util.logging.Logger.getLogger("org.apache.fop").setLevel(java.util.logging.Level.OFF);
        try {
            FopFactoryBuilder builder = new FopFactoryBuilder(HERE, new Held());
            builder.setConfiguration(new DefaultConfigurationBuilder().build(
                    new ByteArrayInputStream(settings.getBytes(StandardCharsets.UTF_8))));
            FopFactory factory = builder.build();
            factory.getFontManager().setResourceResolver(ResourceResolverFactory.createInternalResourceResolver(HERE, new Held()));
            return factory;
        } catch (ConfigurationException ours) {
            throw new IllegalStateException("the settings of the typesetter are ours", ours);
        }
    }

    /** A PDF that still lacks what {@link PdfRecord} adds. */
    static byte[] set(PrintDocument sheet, Use use) throws IOException {
        FopFactory factory = use.taken();
        try {
            ByteArrayOutputStream pdf = new ByteArrayOutputStream();
            FOUserAgent agent = factory.newFOUserAgent();
            agent.setTitle(sheet.title());
            agent.setProducer("Faultwright");
            // What does not fit is told by nobody but the page itself; a warning has no reader here.
            agent.getEventBroadcaster().addEventListener(event -> { });
            agent.setDocumentHandlerOverride(new ArrowPages(
                    agent.getRendererFactory().createDocumentHandler(agent, MimeConstants.MIME_PDF)));
            ContentHandler into = factory.newFop(MimeConstants.MIME_PDF, agent, pdf).getDefaultHandler();
            into.startDocument();
            sheet.document().write(into);
            into.endDocument();
            use.idle.add(factory);
            return pdf.toByteArray();
        } catch (SAXException refused) {
            throw new IOException("The sheet could not be set: " + refused.getMessage(), refused);
        }
    }

    /** The two fonts, and nothing else. */
    private static final class Held implements ResourceResolver {
        @Override
        public Resource getResource(URI uri) throws IOException {
            String path = String.valueOf(uri.getPath());
            if (path.endsWith(REGULAR) || path.endsWith(BOLD)) {
                return new Resource(new ByteArrayInputStream(PrintFonts.file(path.endsWith(BOLD))));
            }
            throw new IOException("a sheet fetches nothing: " + uri);
        }

        @Override
        public OutputStream getOutputStream(URI uri) throws IOException {
            throw new IOException("a sheet writes nothing: " + uri);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import javax.print.Doc;
import javax.print.DocFlavor;
import javax.print.DocPrintJob;
import javax.print.PrintException;
import javax.print.PrintService;
import javax.print.ServiceUIFactory;
import javax.print.StreamPrintServiceFactory;
import javax.print.attribute.Attribute;
import javax.print.attribute.AttributeSet;
import javax.print.attribute.HashPrintServiceAttributeSet;
import javax.print.attribute.PrintJobAttributeSet;
import javax.print.attribute.PrintRequestAttributeSet;
import javax.print.attribute.PrintServiceAttribute;
import javax.print.attribute.PrintServiceAttributeSet;
import javax.print.attribute.standard.Copies;
import javax.print.attribute.standard.JobName;
import javax.print.attribute.standard.Media;
import javax.print.event.PrintJobAttributeListener;
import javax.print.event.PrintJobListener;
import javax.print.event.PrintServiceAttributeListener;

/** A printer whose paper is PostScript, made by Java itself; there only while it is plugged in. */
final class KeptPrinter implements PrintService {
    private static final Set<Class<?>> CAN = Set.of(Copies.class, JobName.class, Media.class);

    private final String name;
    private final ByteArrayOutputStream paper = new ByteArrayOutputStream();
    private volatile boolean pluggedIn = true;
    private volatile boolean jammed;
    private volatile boolean burnt;
    private volatile PrintRequestAttributeSet wanted;
    private volatile Thread thread;
    private final Set<Thread> asking = ConcurrentHashMap.newKeySet();

    KeptPrinter(String name) {
        this.name = name;
    }

    void plug(boolean in) {
        pluggedIn = in;
        jammed = false;
        burnt = false;
        asking.clear();
        paper.reset();
    }

    boolean isPluggedIn() {
        return pluggedIn;
    }

    void jam() {
        jammed = true;
    }

    /** From now on it fails as no printer should. */
    void burn() {
        burnt = true;
    }

    String paper() {
        return paper.toString(StandardCharsets.ISO_8859_1);
    }

    PrintRequestAttributeSet wanted() {
        return wanted;
    }

    /** Those that have asked what it can do. */
    Set<Thread> asking() {
        return asking;
    }

    Thread thread() {
        return thread;
    }

    @Override
    public String getName() {
        return name;
    }

    @Override
    public boolean isDocFlavorSupported(DocFlavor flavor) {
        return pluggedIn && flavor.equals(DocFlavor.SERVICE_FORMATTED.PAGEABLE);
    }

    @Override
    public DocFlavor[] getSupportedDocFlavors() {
        return new DocFlavor[] { DocFlavor.SERVICE_FORMATTED.PAGEABLE };
    }

    @Override
    public boolean isAttributeCategorySupported(Class<? extends Attribute> category) {
        return CAN.contains(category);
    }

    @Override
    public boolean isAttributeValueSupported(Attribute value, DocFlavor flavor, AttributeSet attributes) {
        asking.add(Thread.currentThread());
        return CAN.contains(value.getCategory());
    }

    @Override
    public DocPrintJob createPrintJob() {
        return new KeptJob();
    }

    @Override
    public void addPrintServiceAttributeListener(PrintServiceAttributeListener listener) {
        // nothing about it changes
    }

    @Override
    public void removePrintServiceAttributeListener(PrintServiceAttributeListener listener) {
        // nothing about it changes
    }

    @Override
    public PrintServiceAttributeSet getAttributes() {
        return new HashPrintServiceAttributeSet();
    }

    @Override
    public <T extends PrintServiceAttribute> T getAttribute(Class<T> category) {
        return null;
    }

    @Override
    public Class<?>[] getSupportedAttributeCategories() {
        return CAN.toArray(Class<?>[]::new);
    }

    @Override
    public Object getDefaultAttributeValue(Class<? extends Attribute> category) {
        return null;
    }

    @Override
    public Object getSupportedAttributeValues(Class<? extends Attribute> category, DocFlavor flavor, AttributeSet attributes) {
        return null;
    }

    @Override
    public AttributeSet getUnsupportedAttributes(DocFlavor flavor, AttributeSet attributes) {
        return null;
    }

    @Override
    public ServiceUIFactory getServiceUIFactory() {
        return null;
    }

    private final class KeptJob implements DocPrintJob {
        @Override
        public void print(Doc doc, PrintRequestAttributeSet attributes) throws PrintException {
            thread = Thread.currentThread();
            wanted = attributes;
            if (jammed) {
                throw new PrintException("paper jam");
            }
            if (burnt) {
                throw new IllegalStateException("smoke");
            }
            StreamPrintServiceFactory.lookupStreamPrintServiceFactories(DocFlavor.SERVICE_FORMATTED.PAGEABLE, "application/postscript")[0]
                    .getPrintService(paper).createPrintJob().print(doc, attributes);
        }

        @Override
        public PrintService getPrintService() {
            return KeptPrinter.this;
        }

        @Override
        public PrintJobAttributeSet getAttributes() {
            return new javax.print.attribute.HashPrintJobAttributeSet();
        }

        @Override
        public void addPrintJobListener(PrintJobListener listener) {
            // it tells by returning
        }

        @Override
        public void removePrintJobListener(PrintJobListener listener) {
            // it tells by returning
        }

        @Override
        public void addPrintJobAttributeListener(PrintJobAttributeListener listener, PrintJobAttributeSet attributes) {
            // it tells by returning
        }

        @Override
        public void removePrintJobAttributeListener(PrintJobAttributeListener listener) {
            // it tells by returning
        }
    }
}

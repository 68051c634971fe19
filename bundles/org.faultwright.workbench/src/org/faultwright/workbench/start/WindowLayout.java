/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** How the views are arranged, as the window keeps it from one start to the next. */
final class WindowLayout {
    private static final String FILE = "workbench.xmi";

    private WindowLayout() {
    }

    /** Whether the folder has an arrangement that cannot be read; where there is none, nothing is damaged. */
    static boolean isDamaged(Path folder) {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            return false;
        }
        try {
            SAXParserFactory parsers = SAXParserFactory.newInstance();
            parsers.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            parsers.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            parsers.newSAXParser().parse(file.toFile(), new DefaultHandler());
            return false;
        } catch (SAXException | IOException unreadable) {
            return true;
        } catch (ParserConfigurationException noParser) {
            throw new IllegalStateException(noParser);
        }
    }
}

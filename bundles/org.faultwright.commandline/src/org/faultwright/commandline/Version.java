/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import picocli.CommandLine.IVersionProvider;

/** The version out of the bundle's own manifest. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() throws IOException {
        return new String[] {"faultwright " + number()};
    }

    /** Such as {@code Faultwright 0.1.0}. */
    static String called() {
        try {
            return "Faultwright " + number();
        } catch (IOException unreadable) {
            return "Faultwright";
        }
    }

    /** The day that pages are made on; that of SOURCE_DATE_EPOCH where it is set, so that a page can be made again with the same bytes. */
    static LocalDate today() {
        String epoch = System.getenv("SOURCE_DATE_EPOCH");
        return epoch != null && epoch.matches("[0-9]{1,11}") ? LocalDate.ofInstant(Instant.ofEpochSecond(Long.parseLong(epoch)), ZoneOffset.UTC) : LocalDate.now();
    }

    static String number() throws IOException {
        String own = Faultwright.class.getPackage().getName();
        var manifests = Faultwright.class.getClassLoader().getResources("META-INF/MANIFEST.MF");
        while (manifests.hasMoreElements()) {
            try (InputStream in = manifests.nextElement().openStream()) {
                Attributes attributes = new Manifest(in).getMainAttributes();
                if (own.equals(attributes.getValue("Bundle-SymbolicName"))) {
                    return attributes.getValue("Bundle-Version");
                }
            }
        }
        return "(built without a version)";
    }
}

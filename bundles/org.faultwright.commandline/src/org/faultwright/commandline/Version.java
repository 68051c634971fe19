/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.io.InputStream;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import picocli.CommandLine.IVersionProvider;

/** The version out of the bundle's own manifest. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() throws IOException {
        return new String[] {"faultwright " + number()};
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

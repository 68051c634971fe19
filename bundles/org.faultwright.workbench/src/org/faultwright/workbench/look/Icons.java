/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.Optional;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.resource.ImageRegistry;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.ResourceLocator;
import org.eclipse.swt.graphics.Image;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.ThingKind;

/** The pictures under {@code icons}. */
public final class Icons {
    private static final String BUNDLE = "org.faultwright.workbench";

    private Icons() {
    }

    /** The picture of that name; absent when there is none. Only for the window's thread. */
    public static Optional<Image> of(String name) {
        ImageRegistry registry = JFaceResources.getImageRegistry();
        String key = BUNDLE + "." + name;
        if (registry.getDescriptor(key) == null) {
            Optional<ImageDescriptor> found = descriptor(name);
            if (found.isEmpty()) {
                return Optional.empty();
            }
            registry.put(key, found.get());
        }
        return Optional.ofNullable(registry.get(key));
    }

    /**
     * The picture of a thing in a text; absent for what has none. Only for the window's thread.
     *
     * @param keyword that it begins with, which tells kinds of steps apart
     */
    public static Optional<Image> of(ThingKind kind, String keyword) {
        return name(kind, keyword).flatMap(Icons::of);
    }

    static Optional<String> name(ThingKind kind, String keyword) {
        return switch (kind) {
            case STEP -> Optional.of(keyword);
            case PROCEDURE, LIBRARY, COMPLAINT, CONDITION, SET_UP, INSTRUMENT, POINT, PART, INDICATOR, NOTE, ROUTINE, FAULT, EXAMPLE -> Optional.of(kind.word());
            case LIBRARY_USED -> Optional.of(ThingKind.LIBRARY.word());
            case EQUIPMENT, REVISION, TOOL, DECISION, AMBIENT, CLOSES, OTHERWISE, BEGINNING, VALUE, EXIT, FUNCTION, CODE, PART_NUMBER, UNIT, COMMENT, TEXT,
                    WORDS -> Optional.empty();
        };
    }

    public static Optional<ImageDescriptor> descriptor(String name) {
        return ResourceLocator.imageDescriptorFromBundle(BUNDLE, "icons/" + name + ".svg");
    }

    /** The picture's name for a severity. */
    public static String of(Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case ADVICE -> "advice";
        };
    }
}

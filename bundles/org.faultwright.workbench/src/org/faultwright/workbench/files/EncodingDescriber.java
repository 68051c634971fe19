/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.eclipse.core.runtime.QualifiedName;
import org.eclipse.core.runtime.content.IContentDescription;
import org.eclipse.core.runtime.content.ITextContentDescriber;

/** Tells the platform how a procedure's file is encoded, so that nothing is read, and then written, wrongly. */
public final class EncodingDescriber implements ITextContentDescriber {
    private static final QualifiedName[] SUPPORTED = {IContentDescription.CHARSET, IContentDescription.BYTE_ORDER_MARK};

    @Override
    public int describe(InputStream contents, IContentDescription description) throws IOException {
        if (description == null) {
            return VALID;
        }
        byte[] bytes = contents.readAllBytes();
        Charset charset = Encoding.of(bytes);
        if (description.isRequested(IContentDescription.CHARSET) && charset != StandardCharsets.UTF_8) {
            description.setProperty(IContentDescription.CHARSET, charset.name());
        }
        if (description.isRequested(IContentDescription.BYTE_ORDER_MARK) && charset == StandardCharsets.UTF_8
                && startsWith(bytes, IContentDescription.BOM_UTF_8)) {
            description.setProperty(IContentDescription.BYTE_ORDER_MARK, IContentDescription.BOM_UTF_8);
        }
        return VALID;
    }

    private static boolean startsWith(byte[] bytes, byte[] mark) {
        return bytes.length >= mark.length && java.util.Arrays.equals(bytes, 0, mark.length, mark, 0, mark.length);
    }

    /** A text in the editor says nothing about its encoding; how it was read does. */
    @Override
    public int describe(Reader contents, IContentDescription description) {
        if (description != null) {
            SameEncoding.ofTextBeingWritten().filter(charset -> charset != StandardCharsets.UTF_8)
                    .ifPresent(charset -> description.setProperty(IContentDescription.CHARSET, charset.name()));
        }
        return VALID;
    }

    @Override
    public QualifiedName[] getSupportedOptions() {
        return SUPPORTED.clone();
    }
}

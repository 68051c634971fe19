/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Optional;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.files.Encoding;
import org.faultwright.workbench.files.LargestText;

/**
 * A text of an open folder as it stands in its editor, saved or not, or else on disk. From any thread.
 *
 * @param source absent where it cannot be read
 * @param remark what the reader should know, in a sentence: why it was not read, or that it is not in UTF-8; absent for most
 */
public record ShelfText(IFile file, Optional<SourceText> source, Optional<String> remark) {
    public static ShelfText of(IFile file) {
        ITextFileBuffer open = FileBuffers.getTextFileBufferManager().getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
        if (open != null) {
            return new ShelfText(file, Optional.of(new SourceText(LiveTexts.path(file), open.getDocument().get())), Optional.empty());
        }
        Optional<String> refused = LargestText.refusal(file);
        if (refused.isPresent()) {
            return new ShelfText(file, Optional.empty(), refused);
        }
        try {
            byte[] bytes = Files.readAllBytes(LiveTexts.onDisk(file));
            Charset charset = Encoding.of(bytes);
            Optional<String> remark = charset.equals(StandardCharsets.UTF_8) ? Optional.empty()
                    : Optional.of("\"" + file.getName() + "\" is not in UTF-8; it was read as " + charset.displayName() + ".");
            return new ShelfText(file, Optional.of(new SourceText(LiveTexts.path(file), Encoding.read(bytes))), remark);
        } catch (IOException unreadable) {
            return new ShelfText(file, Optional.empty(), Optional.of("\"" + file.getName() + "\" cannot be read: may you read it?"));
        }
    }
}

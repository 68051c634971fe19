/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.compare;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFileState;
import org.eclipse.core.runtime.CoreException;
import org.faultwright.language.EarlierTexts;
import org.faultwright.language.EarlierTexts.Unusable;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.files.Encoding;
import org.faultwright.workbench.files.LargestText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** What the text in front is compared with. It is read away from the window's thread. */
sealed interface ComparedWith {
    /** What the choice is called in the list. */
    String words();

    /**
     * The earlier procedure.
     *
     * @throws Unusable with one sentence where there is none to compare with
     */
    Procedure read(LiveText now) throws Unusable;

    /** The file of the text in front, as it was saved last. */
    record Saved() implements ComparedWith {
        static final String WORDS = "The text as it was saved";

        @Override
        public String words() {
            return WORDS;
        }

        @Override
        public Procedure read(LiveText now) throws Unusable {
            Optional<String> refused = LargestText.refusal(now.file());
            if (refused.isPresent()) {
                throw new Unusable(refused.get());
            }
            try {
                return earlier(now, Files.readAllBytes(Path.of(LiveTexts.path(now.file()))), "The saved file");
            } catch (IOException unreadable) {
                throw new Unusable("\"" + now.file().getName() + "\" cannot be read from its folder: is it there still?");
            }
        }
    }

    /** A text that was saved over, as the workspace keeps it. */
    record EarlierText(IFile file, IFileState state) implements ComparedWith {
        private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss");

        @Override
        public String words() {
            return "Kept from " + TIME.format(Instant.ofEpochMilli(state.getModificationTime()).atZone(ZoneId.systemDefault()));
        }

        @Override
        public Procedure read(LiveText now) throws Unusable {
            if (!file.equals(now.file())) {
                throw new Unusable("That text was kept of \"" + file.getName() + "\"; choose one that was kept of this file.");
            }
            try (InputStream bytes = state.getContents()) {
                return earlier(now, bytes.readNBytes(LargestText.LARGEST_FILE), "The kept text");
            } catch (IOException | CoreException gone) {
                throw new Unusable("The text of that time is not kept any more; choose another one.");
            }
        }
    }

    /** A text, a published tree, or a folder of a release or of texts. */
    record OnDisk(Path path) implements ComparedWith {
        @Override
        public String words() {
            return path.toString();
        }

        @Override
        public Procedure read(LiveText now) throws Unusable {
            return EarlierTexts.of(now.text().document().name().text(), path);
        }
    }

    private static Procedure earlier(LiveText now, byte[] bytes, String which) throws Unusable {
        SourceText text = new SourceText(LiveTexts.path(now.file()), Encoding.read(bytes));
        if (LiveTexts.get().services().document(text) instanceof Procedure procedure && !(procedure.steps().isEmpty()
                && !procedure.problems().isEmpty())) {
            return procedure;
        }
        throw new Unusable(which + " cannot be read as a procedure; choose another one to compare with.");
    }
}

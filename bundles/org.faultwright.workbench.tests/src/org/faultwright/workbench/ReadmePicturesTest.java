/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Shelf;
import org.faultwright.workbench.shelf.Folders;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The pictures of the README, taken from the running window; releng/pictures.sh names the folder that they go into. */
@ExtendWith(KeepPicture.class)
class ReadmePicturesTest {
    private static final double DPI = 110;

    @TempDir
    private Path elsewhere;

    @Test
    void should_picture_the_window_and_a_card() throws CoreException, IOException {
        String named = System.getProperty("faultwright.pictures", "");
        Path folder = named.isEmpty() ? elsewhere : Path.of(named);
        Display display = Display.getCurrent();
        Shell shell = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell();
        shell.setBounds(20, 20, 1500, 920);
        ITextEditor editor = Editors.open(Folders.demo().getFile(FaultwrightWindowAdvisor.FIRST_SHOWN)).orElseThrow();
        String text = Editors.document(editor).orElseThrow().get();
        CardView card = (CardView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(CardView.ID);
        CardPages pages = Waiting.untilPresent("the card is there", card::pages);
        editor.selectAndReveal(text.indexOf("\nmeasure ") + "\nmeasure ".length(), 0);
        Waiting.until("everything is checked", () -> Shelf.get().isComplete() && card.picturesKept() > 0);
        Waiting.until("the step is marked", () -> card.marked().isPresent());
        boolean[] settled = {false};
        display.timerExec(1_500, () -> settled[0] = true);
        Waiting.until("the window has settled", () -> settled[0]);

        save(shell, folder.resolve("workbench.png"));
        ImageIO.write(pages.picture(pages.places().get(card.marked().orElseThrow()).page(), DPI), "png", folder.resolve("card.png").toFile());

        assertTrue(Files.size(folder.resolve("workbench.png")) > 20_000);
        assertTrue(Files.size(folder.resolve("card.png")) > 10_000);
    }

    private static void save(Shell shell, Path file) {
        Rectangle area = shell.getBounds();
        Image image = new Image(shell.getDisplay(), area.width, area.height);
        GC gc = new GC(shell.getDisplay());
        try {
            gc.copyArea(image, area.x, area.y);
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {image.getImageData()};
            loader.save(file.toString(), SWT.IMAGE_PNG);
        } finally {
            gc.dispose();
            image.dispose();
        }
    }
}

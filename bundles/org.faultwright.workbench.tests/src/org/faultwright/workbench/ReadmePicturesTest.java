/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.internal.PartSite;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.chart.ChartView;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.find.FindView;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.Menus;
import org.faultwright.workbench.walk.WalkView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The pictures of the README, taken from the running window; releng/pictures.sh names the folder that they go into. */
@ExtendWith(KeepPicture.class)
class ReadmePicturesTest {
    /** An empty view takes fewer. */
    private static final long LEAST_BYTES = 5_000;
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
        ITextEditor editor = Editors.open(Folders.demo().getFile(Folders.FIRST_OF_THE_DEMO)).orElseThrow();
        String text = Editors.document(editor).orElseThrow().get();
        CardView card = (CardView) page().findView(CardView.ID);
        page().bringToTop(card); // with large letters other views stand before it
        Waiting.untilPresent("the card is there", card::pages);
        editor.selectAndReveal(text.indexOf("\nmeasure ") + "\nmeasure ".length(), 0);
        Waiting.until("everything is checked", () -> FolderDocuments.get().isComplete() && card.picturesKept() > 0);
        Waiting.until("the step is marked", () -> card.marked().filter(step -> card.pages().filter(made -> made.places().containsKey(step)).isPresent()).isPresent());
        boolean[] settled = {false};
        display.timerExec(1_500, () -> settled[0] = true);
        Waiting.until("the window has settled", () -> settled[0]);

        save(shell, folder.resolve("workbench.png"));
        // a card that has settled meanwhile takes the place of the first one, whose pages are closed then
        ImageIO.write(Waiting.untilPresent("the page of the marked step is drawn", () -> card.pages().flatMap(pages -> marked(card, pages))),
                "png", folder.resolve("card.png").toFile());

        assertTrue(Files.size(folder.resolve("workbench.png")) > 20_000);
        assertTrue(Files.size(folder.resolve("card.png")) > 10_000);
    }

    private static Optional<BufferedImage> marked(CardView card, CardPages pages) {
        try {
            return Optional.of(pages.picture(pages.places().get(card.marked().orElseThrow()).page(), DPI));
        } catch (IOException closed) {
            return Optional.empty();
        }
    }

    /** Those of the help: a view each, as it stands in the window. */
    @Test
    void should_picture_views_for_the_help() throws Exception {
        String named = System.getProperty("faultwright.helpPictures", "");
        Path folder = named.isEmpty() ? elsewhere : Path.of(named);
        Files.createDirectories(folder);
        Shell shell = page().getWorkbenchWindow().getShell();
        shell.setBounds(20, 20, 1500, 920);
        ITextEditor editor = Editors.open(Folders.demo().getFile(Folders.FIRST_OF_THE_DEMO)).orElseThrow();
        String text = Editors.document(editor).orElseThrow().get();
        editor.selectAndReveal(text.indexOf("\nmeasure ") + "\nmeasure ".length(), 0);
        Waiting.until("everything is checked", () -> FolderDocuments.get().isComplete());

        page().showView(FindView.ID);
        Text field = Controls.all(shell, Text.class).stream().filter(one -> one.getMessage().startsWith("Words, part")).findFirst().orElseThrow();
        field.setText("print head");
        FindView find = (FindView) page().findView(FindView.ID);
        alone(find, folder.resolve("find.png"));
        field.setText("");

        ChartView chart = (ChartView) page().showView(ChartView.ID);
        Waiting.until("the chart is laid out", () -> chart.chart().isPresent() && chart.said().isEmpty());
        settle();
        view(page().findView(ChartView.ID), folder.resolve("chart.png"));
        WalkView walk = (WalkView) page().showView(WalkView.ID);
        Waiting.until("it can be begun", () -> walk.isShown() || walk.begin()); // an earlier walk is kept
        Waiting.until("it stands at a step", walk::isShown);
        settle();
        view(walk, folder.resolve("walk.png"));
        CardView card = (CardView) page().showView(CardView.ID);
        Waiting.until("the card is drawn", () -> card.picturesKept() > 0);
        settle();
        view(page().findView(CardView.ID), folder.resolve("card.png"));
        HelpView.showRule("hole-between-bands");
        settle();
        view(page().findView(HelpView.ID), folder.resolve("help.png"));
        page().hideView(page().findView(HelpView.ID));

        try (Bench bench = new Bench()) {
            bench.file("FanStopped.procedure", SPARE);
            bench.file("FanLoud.procedure", SPARE.replace("FanStopped", "FanLoud").replace("Fan has stopped", "Fan is loud"));
            FindingsView findings = (FindingsView) page().showView(FindingsView.ID);
            Waiting.until("it is found", () -> FolderDocuments.get().isComplete() && Controls.all(shell, Table.class).stream()
                    .anyMatch(table -> table.getItemCount() > 2));
            Table table = Controls.all(shell, Table.class).stream().filter(one -> one.isVisible() && one.getItemCount() > 2).findFirst().orElseThrow();
            settle();
            for (int row = 0; row < table.getItemCount(); row++) {
                if (table.getItem(row).getText().contains("Spare")) {
                    table.setSelection(row);
                    table.notifyListeners(SWT.Selection, new Event());
                    break;
                }
            }
            alone(findings, folder.resolve("findings.png"));
            shell.getDisplay().timerExec(4_000, () -> {
                Shell dialog = shell.getDisplay().getActiveShell();
                save(dialog.getDisplay().map(dialog, null, dialog.getClientArea()), folder.resolve("fix-all.png"));
                dialog.close();
            });
            Menus.run("fixAll");
        }
        for (String picture : List.of("find", "chart", "walk", "card", "help", "findings", "fix-all")) {
            assertTrue(bytes(folder.resolve(picture + ".png")) > LEAST_BYTES, picture);
        }
    }

    private static final String SPARE = """
            procedure FanStopped "Fan has stopped"
            equipment "Brenholt M1"
            revision 1 draft
            complaints "gets hot"

            point Spare "Test pad beside the fan"
            part Lead "Fan lead"

            check Look "Does the fan turn?" {
                confirms complaint
                takes 1 min
                yes -> End
                no  -> End
            }
            conclude End "Done" {
                finds nothing
            }
            """;

    private static void settle() {
        boolean[] settled = {false};
        Display.getCurrent().timerExec(1_500, () -> settled[0] = true);
        Waiting.until("the window has settled", () -> settled[0]);
    }

    /** With the window to itself for a moment. */
    private static void alone(IViewPart view, Path file) {
        Shell shell = page().getWorkbenchWindow().getShell();
        Rectangle before = shell.getBounds();
        page().toggleZoom(page().getReference(view));
        shell.setSize(1100, 520);
        settle();
        view(view, file);
        page().toggleZoom(page().getReference(view));
        shell.setBounds(before);
    }

    private static void view(IViewPart view, Path file) {
        Control control = (Control) ((PartSite) view.getSite()).getModel().getWidget();
        Composite tabs = control.getParent();
        org.eclipse.swt.graphics.Point at = tabs.toDisplay(0, 0);
        // a page of a card that has just settled is drawn a moment later
        Waiting.until(view.getTitle() + " is drawn", () -> {
            save(new Rectangle(at.x, at.y, tabs.getSize().x, tabs.getSize().y), file);
            return bytes(file) > LEAST_BYTES;
        });
    }

    private static long bytes(Path file) {
        try {
            return Files.size(file);
        } catch (IOException gone) {
            return 0;
        }
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }

    private static void save(Shell shell, Path file) {
        save(shell.getBounds(), file);
    }

    private static void save(Rectangle area, Path file) {
        Display display = Display.getCurrent();
        Image image = new Image(display, area.width, area.height);
        GC gc = new GC(display);
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

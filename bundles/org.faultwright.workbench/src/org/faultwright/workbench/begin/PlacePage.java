/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.language.beginning.InterviewProgress;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.LabelledFields;

/** What it is called and where it goes. */
final class PlacePage extends QuestionPage {
    private final Supplier<String> suggested;
    private final Path first;
    private final String nothing;
    private Text name;
    private Text folder;
    private Label come;
    private QuestionDialog dialog;
    private boolean isNamed;
    private boolean suggesting;

    /** @param nothing what the text is while nothing is answered */
    PlacePage(Supplier<String> suggested, Path first, String nothing) {
        super("Name and folder", "What is it called, and where does it go?");
        this.suggested = suggested;
        this.first = first;
        this.nothing = nothing;
    }

    @Override
    void create(Composite page, QuestionDialog asking) {
        dialog = asking;
        name = LabelledFields.text(page, "Name", "letters and digits", () -> {
            if (suggesting) {
                asking.regrow();
            } else {
                isNamed = true;
                asking.changed();
            }
        });
        folder = LabelledFields.text(page, "Folder", "", asking::buttons);
        folder.setText(first.toString());
        LabelledFields.push(page, "&Choose the folder\u2026", this::choose);
        come = LabelledFields.words(page, "");
        asking.whenGrown(() -> {
            come.setText(asking.come().map(this::words).orElse(""));
            asking.buttons();
            asking.grown();
        });
    }

    private String words(InterviewProgress grown) {
        return grown.isWhole() ? GrowingText.words(grown) : grown.remarks().isEmpty() ? nothing : "This is written when it is whole. " + String.join(" ", grown.remarks());
    }

    private void choose() {
        DirectoryDialog choosing = new DirectoryDialog(dialog.getShell());
        choosing.setText("Where it goes");
        choosing.setFilterPath(folder.getText());
        Optional.ofNullable(choosing.open()).ifPresent(folder::setText);
    }

    @Override
    void show() {
        if (!isNamed) {
            suggesting = true;
            name.setText(suggested.get());
            suggesting = false;
        }
    }

    /** Whether nobody has seen the name yet. */
    boolean isUnnamed() {
        return name.getText().isBlank();
    }

    String procedureName() {
        String typed = name == null ? "" : name.getText().strip();
        return Beginning.isName(typed) ? typed : "MyProcedure";
    }

    Optional<Path> folder() {
        try {
            Path path = Path.of(folder.getText().strip());
            return path.isAbsolute() ? Optional.of(path) : Optional.empty();
        } catch (InvalidPathException none) {
            return Optional.empty();
        }
    }

    @Override
    String problem() {
        String typed = name.getText().strip();
        if (!Beginning.isName(typed)) {
            return "The name has letters and digits, a letter first; a word of the language cannot be one.";
        }
        if (folder().isEmpty()) {
            return "Name a folder by its whole path.";
        }
        if (Files.exists(folder().get()) && !Files.isDirectory(folder().get())) {
            return folder().get() + " is a file; name a folder.";
        }
        if (Files.exists(NewText.file(folder().get(), typed))) {
            return "There is a " + NewText.file(folder().get(), typed).getFileName() + " already; it stays as it is. Take another name.";
        }
        return dialog.come().filter(grown -> !grown.isWhole() && !grown.remarks().isEmpty()).map(grown -> grown.remarks().get(0)).orElse("");
    }

    @Override
    void setFocus() {
        name.setFocus();
        name.selectAll();
    }

    /** The first folder on the shelf; never the demo, which is looked at. */
    static Path atHand() {
        return Folders.all().stream().filter(project -> !project.getName().equals(Folders.DEMO)).findFirst().map(Folders::place)
                .map(place -> place.getLocation().toPath()).orElseGet(PlacePage::usual);
    }

    /** Where new procedures go while nobody has said. */
    private static Path usual() {
        return Path.of(System.getProperty("user.home"), "procedures");
    }
}

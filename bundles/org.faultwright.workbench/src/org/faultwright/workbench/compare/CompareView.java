/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.compare;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFileState;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.IResourceChangeListener;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.part.ViewPart;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.language.EarlierTexts.Unusable;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.KeptPaths;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.ScrolledPage;

/**
 * What the text in front says otherwise than an earlier one, by what both mean: another file, a release, a published tree, the
 * saved file, or a text that was saved over. It follows the text while it is typed and is worked out away from the window's thread.
 */
public final class CompareView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.compare";

    /** The files and folders that texts were compared with. */
    static final KeptPaths PLACES = new KeptPaths("comparedWith", 6);
    static final String WAITS = "The comparison waits until the text can be read.";
    private static final int MILLISECONDS_AFTER_A_CHANGE = 250;
    private static final String COMPARED_WITH = "Compared with";
    private static final String[] ENDINGS = {"*.procedure;*.procedure.txt;*.tree.json", "*"};

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final IResourceChangeListener saving = this::saved;
    private final Job comparing = new Comparing();
    private volatile ComparisonRequest wanted;
    private LiveText asked;
    private ComparedWith against = PLACES.all().stream().<ComparedWith>map(ComparedWith.OnDisk::new).findFirst().orElseGet(ComparedWith.Saved::new);
    private List<ComparedWith> choices = List.of();
    /** What stands in the field without anybody typing. */
    private String written = "";
    private Answer shown;
    private Composite body;
    private Combo choice;
    private Label summary;
    private DifferenceTree tree;
    private Text chosenWords;

    /** What is to be worked out. */
    private record ComparisonRequest(LiveText live, ComparedWith against) {
    }

    /** @param sentence why there is no comparison; empty where there is one */
    private record Answer(ComparisonRequest of, Optional<SinceRelease> since, String sentence, List<ComparedWith> choices) {
    }

    @Override
    public void createPartControl(Composite parent) {
        comparing.setSystem(true);
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(4).margins(8, 6).spacing(6, 5).applyTo(body);
        new Label(body, SWT.NONE).setText(COMPARED_WITH);
        choice = new Combo(body, SWT.DROP_DOWN);
        AccessibleName.as(choice, COMPARED_WITH);
        choice.setToolTipText("The saved text, a kept one, or the path of a file or folder");
        choice.setVisibleItemCount(16);
        choice.addListener(SWT.Selection, event -> choose(choice.getSelectionIndex()));
        choice.addListener(SWT.DefaultSelection, event -> typed(choice.getText().strip()));
        GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).hint(120, SWT.DEFAULT).applyTo(choice);
        button("File\u2026", "A text, a released text or a published tree", this::askForFile);
        button("Folder\u2026", "The folder of the last release, or of other texts", this::askForFolder);
        summary = new Label(body, SWT.WRAP);
        GridDataFactory.fillDefaults().span(4, 1).grab(true, false).hint(160, SWT.DEFAULT).applyTo(summary);
        SashForm halves = new SashForm(body, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().span(4, 1).grab(true, true).hint(160, 60).applyTo(halves);
        tree = new DifferenceTree(new Composite(halves, SWT.NONE), this::go, this::tellChosen);
        chosenWords = new Text(halves, SWT.READ_ONLY | SWT.MULTI | SWT.WRAP | SWT.V_SCROLL);
        AccessibleName.as(chosenWords, "The chosen difference in full");
        halves.setWeights(74, 26);
        ResourcesPlugin.getWorkspace().addResourceChangeListener(saving, IResourceChangeEvent.POST_CHANGE);
        ActiveText.get().addView(this, following);
    }

    private void button(String words, String hint, Runnable does) {
        Button button = new Button(body, SWT.PUSH);
        button.setText(words);
        button.setToolTipText(hint);
        button.addListener(SWT.Selection, event -> does.run());
    }

    /** What the comparison says, or why there is none. */
    public String said() {
        return summary.getText();
    }

    /** The differences shown, in their order. */
    public List<Difference> differences() {
        return shown == null ? List.of() : shown.since().map(SinceRelease::differences).orElse(List.of());
    }

    /** What can be chosen to compare with, in the words of the list. */
    List<String> choices() {
        return List.of(choice.getItems());
    }

    Composite control() {
        return body;
    }

    // ---- what it is compared with

    private void choose(int index) {
        if (index >= 0 && index < choices.size()) {
            compareWith(choices.get(index));
        }
    }

    private void typed(String words) {
        Optional<ComparedWith> known = choices.stream().filter(one -> one.words().equals(words)).findFirst();
        if (known.isPresent()) {
            compareWith(known.get());
        } else if (!words.isEmpty()) {
            try {
                compareWith(new ComparedWith.OnDisk(Path.of(words)));
            } catch (InvalidPathException none) {
                say("\"" + words + "\" is no path; type that of a file or folder, or choose one.");
            }
        }
    }

    private void askForFile() {
        FileDialog dialog = new FileDialog(body.getShell(), SWT.OPEN);
        dialog.setText("Compare with a file");
        dialog.setFilterExtensions(ENDINGS);
        dialog.setFilterNames(new String[] {"Procedures and trees", "All files"});
        Optional.ofNullable(dialog.open()).ifPresent(this::typed);
    }

    private void askForFolder() {
        DirectoryDialog dialog = new DirectoryDialog(body.getShell(), SWT.NONE);
        dialog.setText("Compare with a folder");
        dialog.setMessage("The folder that the last release was published into, or one with earlier texts.");
        Optional.ofNullable(dialog.open()).ifPresent(this::typed);
    }

    private void compareWith(ComparedWith chosen) {
        against = chosen;
        if (chosen instanceof ComparedWith.OnDisk place) {
            PLACES.add(place.path());
        }
        written = chosen.words();
        choice.setText(written);
        if (asked != null) {
            compare(0);
        }
    }

    // ---- the text in front

    private void follow(Optional<ActiveText.Place> place) {
        if (body.isDisposed()) {
            return;
        }
        LiveText live = place.map(ActiveText.Place::live).orElse(null);
        if (live == null || !(live.text().document() instanceof Procedure)) {
            asked = null;
            clear(live != null ? "A library is compared with each procedure that uses it. Open one of those."
                    : ActiveText.get().editor().isPresent() ? "Reading the procedure\u2026" : "Open a procedure to compare it.");
            return;
        }
        if (live == asked) {
            return;
        }
        boolean other = asked == null || !asked.file().equals(live.file());
        boolean same = !other && asked.text().document() == live.text().document();
        asked = live;
        if (other && against instanceof ComparedWith.EarlierText) {
            against = new ComparedWith.Saved();
        }
        if (other) {
            clear("Comparing\u2026");
        }
        if (!same) {
            compare(other ? 0 : MILLISECONDS_AFTER_A_CHANGE);
        }
    }

    /** A save changes what is saved and what is kept, though not the text. Called from any thread. */
    private void saved(IResourceChangeEvent event) {
        ComparisonRequest last = wanted;
        if (last != null && event.getDelta() != null && event.getDelta().findMember(last.live().file().getFullPath()) != null) {
            ScrolledPage.later(body, () -> {
                if (getSite().getPage().isPartVisible(this) && asked != null) {
                    compare(MILLISECONDS_AFTER_A_CHANGE);
                } else {
                    asked = null; // it is compared anew when it is seen
                }
            });
        }
    }

    private void compare(int delay) {
        comparing.cancel();
        if (!asked.text().document().problems().isEmpty()) {
            wanted = null;
            say(WAITS);
            return;
        }
        wanted = new ComparisonRequest(asked, against);
        comparing.schedule(delay);
    }

    private void clear(String words) {
        wanted = null;
        shown = null;
        comparing.cancel();
        tree.show(List.of());
        chosenWords.setText("");
        say(words);
    }

    private void say(String words) {
        if (!words.equals(summary.getText())) {
            summary.setText(words);
            body.layout(true, true);
        }
    }

    private void show(Answer answer) {
        if (body.isDisposed() || answer.of() != wanted) {
            return;
        }
        shown = answer;
        offer(answer.choices());
        tree.show(differences());
        tellChosen();
        say(answer.since().map(CompareView::inWords).orElse(answer.sentence()));
    }

    /** The kinds are counted at their headings. */
    private static String inWords(SinceRelease since) {
        int count = since.differences().size();
        String found = count == 0 ? since.inShort() + " Compared with " : (count == 1 ? "1 difference from " : count + " differences from ");
        return found + SinceRelease.record(since.earlier()) + "."
                + (since.hidesAChange() ? " Both state the same revision: number this one anew before it is released." : "")
                + (since.earlier().problems().isEmpty() ? "" : " Parts of the earlier text cannot be read; they are not compared.");
    }

    /** Leaves the list alone while it is worked with. */
    private void offer(List<ComparedWith> now) {
        List<String> words = now.stream().map(ComparedWith::words).toList();
        choices = now;
        boolean typing = choice.isFocusControl() && !choice.getText().equals(written);
        String typed = typing ? choice.getText() : against.words();
        if (!words.equals(choices())) {
            choice.setItems(words.toArray(String[]::new));
        }
        if (!typed.equals(choice.getText())) {
            choice.setText(typed);
        }
        if (!typing) {
            written = typed;
        }
    }

    // ---- the chosen difference

    private void go(Difference difference, boolean activate) {
        tellChosen();
        Optional<SourceRange> at = difference.at();
        if (at.isEmpty() || asked == null || shown == null) {
            return;
        }
        boolean here = at.get().source().name().equals(shown.of().live().text().source().name());
        if (here) {
            ActiveText.get().editor().ifPresent(editor -> goInText(editor, at.get(), activate));
        } else if (activate) {
            Editors.show(at.get());
        }
    }

    private void goInText(ITextEditor editor, SourceRange at, boolean activate) {
        if (activate) {
            editor.getSite().getPage().activate(editor);
        }
        Editors.document(editor).ifPresent(document -> {
            int[] range = now(at, document.get());
            editor.selectAndReveal(range[0], range[1]);
        });
    }

    /** Where words of the compared text stand by now; only the place where they were, if they were changed since. */
    private static int[] now(SourceRange at, String text) {
        String compared = at.source().content();
        int[] changed = Editors.differing(compared, text);
        if (at.end() <= changed[0]) {
            return new int[] {at.offset(), at.length()};
        }
        return at.offset() >= changed[0] + changed[1] ? new int[] {at.offset() + text.length() - compared.length(), at.length()}
                : new int[] {Math.min(changed[0], text.length()), 0};
    }

    private void tellChosen() {
        String words = tree.chosen().map(CompareView::inFull).or(tree::heading).orElse("");
        if (!words.equals(chosenWords.getText())) {
            chosenWords.setText(words);
        }
    }

    private static String inFull(Difference one) {
        String where = one.at().isPresent() ? "" : "\nIt is not in the text any more.";
        return one.what() + "\nEarlier: " + one.was() + "\nNow: " + one.now() + (one.meaning().isEmpty() ? "" : "\n" + one.meaning()) + where;
    }

    // ---- away from the window's thread

    private final class Comparing extends Job {
        private ComparisonRequest lastRead;
        private Procedure earlier;

        Comparing() {
            super("Comparing two revisions");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            ComparisonRequest of = wanted;
            if (of == null || !(of.live().text().document() instanceof Procedure now)) {
                return Status.OK_STATUS;
            }
            Answer answer = answer(of, now);
            if (monitor.isCanceled()) {
                return Status.CANCEL_STATUS;
            }
            ScrolledPage.later(body, () -> show(answer));
            return Status.OK_STATUS;
        }

        private Answer answer(ComparisonRequest of, Procedure now) {
            List<ComparedWith> choices = offered(of);
            try {
                return new Answer(of, Optional.of(SinceRelease.of(read(of), now)), "", choices);
            } catch (Unusable none) {
                return new Answer(of, Optional.empty(), none.getMessage(), choices);
            } catch (RuntimeException failed) {
                ILog.of(CompareView.class).error(of.live().file().getName() + " could not be compared.", failed);
                return new Answer(of, Optional.empty(), "These two texts cannot be compared as they are now.", choices);
            }
        }

        /** What does not change while the text is typed is read once; the saved file may be saved at any time. */
        private Procedure read(ComparisonRequest of) throws Unusable {
            boolean known = lastRead != null && lastRead.against() == of.against() && lastRead.live().file().equals(of.live().file())
                    && !(of.against() instanceof ComparedWith.Saved);
            if (!known) {
                earlier = of.against().read(of.live());
                lastRead = of;
            }
            return earlier;
        }
    }

    /** The saved text, the places that were chosen before, then what was saved over, the latest first. */
    private static List<ComparedWith> offered(ComparisonRequest of) {
        List<ComparedWith> choices = new ArrayList<>(List.of(new ComparedWith.Saved()));
        PLACES.all().stream().map(ComparedWith.OnDisk::new).forEach(choices::add);
        IFile file = of.live().file();
        try {
            Arrays.stream(file.getHistory(null)).filter(IFileState::exists).map(state -> new ComparedWith.EarlierText(file, state)).forEach(choices::add);
        } catch (CoreException unreadable) {
            ILog.of(CompareView.class).warn("What was kept of " + file.getName() + " cannot be listed.", unreadable);
        }
        return choices;
    }

    @Override
    public void setFocus() {
        (tree.control().getItemCount() > 0 ? tree.control() : choice).setFocus();
    }

    @Override
    public void dispose() {
        comparing.cancel();
        ResourcesPlugin.getWorkspace().removeResourceChangeListener(saving);
        ActiveText.get().removeView(this);
        super.dispose();
    }
}

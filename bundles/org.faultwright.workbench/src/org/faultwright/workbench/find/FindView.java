/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.Phrases;
import org.faultwright.language.server.FoundPlace;
import org.faultwright.language.server.SearchScope;
import org.faultwright.procedure.Name;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Icons;
import org.faultwright.workbench.look.ScrolledPage;

/** Finds words, parts, points, instruments, codes, notes and faults in every procedure and library of the open folders. */
public final class FindView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.find";

    static final String ASK = "Type words, a part number, a code or a name; or choose what to list. Capitals and accents do not matter.";
    static final String NOT_BEGUN = "Stopped, before a file was looked through.";
    private static final int MILLISECONDS_AFTER_A_KEY = 150;
    private static final int MILLISECONDS_AFTER_A_CHANGE = 300;

    private final Consumer<LiveText> changes = this::changed;
    private final Runnable asking = this::look;
    private final Action stopping = new Action("Stop looking") {
        @Override
        public void run() {
            stopLooking();
        }
    };
    private Text words;
    private Combo among;
    private FoundTree tree;
    /** The one whose news counts; absent before the first. */
    private Optional<FolderSearch> looking = Optional.empty();
    private final Map<IFile, Integer> counts = new HashMap<>();
    private Optional<FolderSearch.News> last = Optional.empty();
    private String state = ASK;
    private boolean stopped;
    private boolean filling;

    /** Shows the view with its cursor in the field. @param typed what to look for; empty leaves what is there */
    static void open(IWorkbenchPage page, String typed) {
        show(page).ifPresent(view -> {
            if (!typed.isEmpty()) {
                view.words.setText(typed);
            }
            view.words.selectAll();
            view.words.setFocus();
        });
    }

    /** Shows every place that names something. */
    static void uses(IWorkbenchPage page, Name declared) {
        show(page).ifPresent(view -> {
            view.filling = true;
            view.words.setText(declared.text());
            view.among.select(SearchScope.EVERYTHING.ordinal());
            view.filling = false;
            view.begin(SearchQuery.forUses(declared));
            view.words.setFocus();
        });
    }

    private static Optional<FindView> show(IWorkbenchPage page) {
        try {
            return Optional.of((FindView) page.showView(ID));
        } catch (PartInitException refused) {
            ILog.of(FindView.class).error("The view for finding cannot be opened.", refused);
            return Optional.empty();
        }
    }

    @Override
    public void createPartControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).spacing(6, 4).margins(4, 4).applyTo(all);
        words = new Text(all, SWT.SEARCH | SWT.ICON_CANCEL);
        words.setMessage("Words, part number, code, name \u2026");
        AccessibleName.as(words, "What to find in all procedures");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(words);
        among = new Combo(all, SWT.READ_ONLY | SWT.DROP_DOWN);
        among.setItems(Arrays.stream(SearchScope.values()).map(SearchScope::words).toArray(String[]::new));
        among.setVisibleItemCount(SearchScope.values().length);
        among.select(0);
        AccessibleName.as(among, "Among what to look");
        tree = new FoundTree(all, this::go);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, true).applyTo(tree.control());
        words.addListener(SWT.Modify, event -> soon(MILLISECONDS_AFTER_A_KEY));
        words.addListener(SWT.DefaultSelection, event -> tree.focusFirst());
        words.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ARROW_DOWN) {
                tree.focusFirst();
                event.doit = false;
            }
        });
        among.addListener(SWT.Selection, event -> soon(0));
        tree.control().addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                words.setFocus();
            }
        });
        stopping.setImageDescriptor(Icons.descriptor("stop").orElse(null));
        stopping.setEnabled(false);
        ActionContributionItem button = new ActionContributionItem(stopping);
        button.setMode(ActionContributionItem.MODE_FORCE_TEXT);
        getViewSite().getActionBars().getToolBarManager().add(button);
        LiveTexts.get().addListener(changes);
        tell();
    }

    private void soon(int milliseconds) {
        if (!filling) {
            words.getDisplay().timerExec(-1, asking);
            words.getDisplay().timerExec(milliseconds, asking);
        }
    }

    private void look() {
        if (!words.isDisposed()) {
            begin(SearchQuery.forWords(words.getText(), SearchScope.values()[Math.max(0, among.getSelectionIndex())]));
        }
    }

    private void begin(SearchQuery looked) {
        looking.ifPresent(Job::cancel);
        looking = Optional.empty();
        tree.clear();
        counts.clear();
        last = Optional.empty();
        stopped = false;
        if (looked.isNothing()) {
            state = ASK;
        } else {
            state = "Looking for " + looked.inWords() + " \u2026";
            FolderSearch next = new FolderSearch(looked, news -> ScrolledPage.later(tree.control(), () -> show(news)));
            looking = Optional.of(next);
            next.schedule();
        }
        stopping.setEnabled(looking.isPresent());
        tell();
    }

    /** Ends the search; what was found stays. One that has not begun yet brings no news of its end. */
    void stopLooking() {
        if (looking.filter(Job::cancel).isPresent() && stopping.isEnabled()) {
            stopped = true;
            stopping.setEnabled(false);
            state = NOT_BEGUN;
            tell();
        }
    }

    private void show(FolderSearch.News news) {
        if (looking.filter(current -> current == news.from()).isEmpty()) {
            return;
        }
        tree.control().setRedraw(false);
        for (FoundInFile found : news.found()) {
            tree.add(found);
            counts.put(found.file(), found.places().size());
        }
        tree.control().setRedraw(true);
        stopped = news.isStopped();
        stopping.setEnabled(!news.ended());
        last = Optional.of(news);
        state = sentence(news);
        tell();
    }

    private String sentence(FolderSearch.News news) {
        int places = counts.values().stream().mapToInt(Integer::intValue).sum();
        int files = (int) counts.values().stream().filter(count -> count > 0).count();
        String progress = news.ended() && !news.isStopped() ? ""
                : (news.isStopped() ? "Stopped, " : "Looking, ") + news.through() + " of " + news.all() + " files.  ";
        if (places == 0) {
            return progress.isEmpty() ? "Nothing found for " + news.from().looked().inWords() + ". Try fewer words, or part of one." : progress;
        }
        return progress + Phrases.counted(places, "place") + " in " + Phrases.counted(files, "file")
                + (places > FoundTree.MOST_SHOWN ? "; the first " + FoundTree.MOST_SHOWN + " are shown. Type more words for fewer." : ".");
    }

    private void tell() {
        setContentDescription(state);
    }

    /** What the view says above the field. */
    String said() {
        return state;
    }

    /** An open text was changed: what was found in it is found anew. From the checking thread. */
    private void changed(LiveText live) {
        if (!live.file().exists()) {
            return;
        }
        ScrolledPage.later(tree.control(), () -> looking.filter(current -> !stopping.isEnabled() && !stopped).ifPresent(current -> {
            Job again = Job.createSystem("Looking through a changed text", (ICoreRunnable) monitor -> {
                FoundInFile found = FoundInFile.of(live.file(), current.looked().now());
                ScrolledPage.later(tree.control(), () -> {
                    if (looking.filter(one -> one == current).isPresent()) {
                        tree.replace(found);
                        counts.put(found.file(), found.places().size());
                        state = last.map(this::sentence).orElse(state);
                        tell();
                    }
                });
            });
            again.schedule(MILLISECONDS_AFTER_A_CHANGE);
        }));
    }

    /** The place that is chosen. */
    Optional<FoundPlace> chosen() {
        return tree.chosen();
    }

    private void go() {
        if (tree.chosen().isEmpty()) {
            tree.chosenFile().flatMap(Editors::open).ifPresent(ITextEditor::setFocus);
            return;
        }
        FoundPlace place = tree.chosen().get();
        Optional<IFile> file = tree.chosenFile();
        file.flatMap(Editors::open).ifPresent(editor -> {
            Optional<Integer> offset = Editors.document(editor).flatMap(document -> offset(place, document));
            offset.ifPresent(at -> editor.selectAndReveal(at, place.at().length()));
            if (offset.isEmpty()) {
                state = "That line has changed since it was found.";
                tell();
                soon(0);
            }
        });
    }

    /** Where a place stands by now: a text may have been changed outside after it was looked through. */
    private static Optional<Integer> offset(FoundPlace place, IDocument document) {
        String text = document.get();
        if (text.equals(place.at().source().content())) {
            return Optional.of(place.at().offset());
        }
        String line = place.at().source().lineText(place.at().line());
        int before = text.lastIndexOf(line, place.at().offset());
        int after = text.indexOf(line, Math.max(0, before));
        int nearest = after >= 0 && (before < 0 || Math.abs(after - place.at().offset()) < Math.abs(before - place.at().offset())) ? after : before;
        return nearest < 0 ? Optional.empty() : Optional.of(nearest + place.at().column() - 1);
    }

    @Override
    public void setFocus() {
        words.setFocus();
    }

    @Override
    public void dispose() {
        LiveTexts.get().removeListener(changes);
        looking.ifPresent(Job::cancel);
        looking = Optional.empty();
        super.dispose();
    }
}

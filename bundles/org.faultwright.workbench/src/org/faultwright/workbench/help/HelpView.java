/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ST;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.language.reference.LanguageReference;
import org.faultwright.language.reference.ReferenceEntry;
import org.faultwright.language.server.WantedWords;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.ScrolledPage;

/** The help: pages about the work, and a page for each rule. */
public final class HelpView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.help";

    /** In pixels; below it, the topics stand above the page. */
    private static final int NARROW = 640;
    private static final String REFERENCE = "The language, word by word";

    private static final int MILLISECONDS_AFTER_A_KEY = 120;

    private final Content content = new Content();
    private final Runnable asking = this::look;
    private WantedWords wanted = WantedWords.of("");
    private Text words;
    private Label said;
    private TreeViewer topics;
    private StyledText page;

    /** Opens the help at a page of its own. */
    public static void showTopic(String id) {
        open().ifPresent(view -> view.select(id));
    }

    /** Opens the help at the page of a rule. */
    public static void showRule(String id) {
        showTopic(id);
    }

    /** What a rule looks for, in words; its id is for machines. */
    public static String ruleTitle(String id) {
        return HelpTopics.ruleTitle(id);
    }

    /** Opens the help at an entry of the reference. */
    public static void showEntry(ReferenceEntry entry) {
        open().ifPresent(view -> LanguageReference.pages().stream().filter(page -> page.entries().contains(entry)).findFirst()
                .ifPresent(page -> {
                    view.select("reference-" + page.id());
                    view.scrollTo(entry.title());
                }));
    }

    /** Opens the help where it is. */
    public static void showAgain() {
        open().ifPresent(HelpView::setFocus);
    }

    private static Optional<HelpView> open() {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
        try {
            return Optional.of((HelpView) window.getActivePage().showView(ID));
        } catch (PartInitException refused) {
            ILog.of(HelpView.class).error("The help cannot be opened.", refused);
            return Optional.empty();
        }
    }

    @Override
    public void createPartControl(Composite parent) {
        SashForm halves = new SashForm(parent, SWT.HORIZONTAL);
        Composite left = new Composite(halves, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 4).margins(4, 4).applyTo(left);
        words = new Text(left, SWT.SEARCH | SWT.ICON_CANCEL);
        words.setMessage("Look in the help \u2026");
        AccessibleName.as(words, "Words to look for in the help");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(words);
        said = new Label(left, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).exclude(true).applyTo(said);
        topics = new TreeViewer(left, SWT.V_SCROLL | SWT.H_SCROLL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(topics.getControl());
        AccessibleName.as(topics.getControl(), "Pages of the help");
        topics.setContentProvider(content);
        topics.setLabelProvider(new Labels());
        topics.setInput(this);
        page = new StyledText(halves, SWT.V_SCROLL | SWT.WRAP | SWT.READ_ONLY | SWT.MULTI);
        AccessibleName.as(page, "Page of the help");
        page.setMargins(14, 10, 14, 10);
        page.setLineSpacing(3);
        halves.setWeights(32, 68);
        halves.addListener(SWT.Resize, event -> halves.setOrientation(
                halves.getClientArea().width < NARROW ? SWT.VERTICAL : SWT.HORIZONTAL));
        topics.addSelectionChangedListener(event -> show(event.getStructuredSelection().getFirstElement()));
        words.addListener(SWT.Modify, event -> {
            words.getDisplay().timerExec(-1, asking);
            words.getDisplay().timerExec(MILLISECONDS_AFTER_A_KEY, asking);
        });
        words.addListener(SWT.DefaultSelection, event -> focusFirst());
        words.addListener(SWT.KeyDown, this::keyInWords);
        topics.getControl().addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                words.setFocus();
            }
        });
        select(HelpTopics.FIRST);
    }

    /** Down goes to the pages found; a page is turned without leaving the field. */
    private void keyInWords(Event event) {
        if (event.keyCode == SWT.ARROW_DOWN) {
            focusFirst();
        } else if (event.keyCode == SWT.PAGE_DOWN || event.keyCode == SWT.PAGE_UP) {
            page.invokeAction(event.keyCode == SWT.PAGE_DOWN ? ST.PAGE_DOWN : ST.PAGE_UP);
        } else {
            return;
        }
        event.doit = false;
    }

    private void focusFirst() {
        Tree tree = topics.getTree();
        if (tree.getItemCount() > 0) {
            if (topics.getStructuredSelection().isEmpty()) {
                topics.setSelection(new StructuredSelection(tree.getItem(0).getData()), true);
            }
            tree.setFocus();
        }
    }

    private void look() {
        if (words.isDisposed()) {
            return;
        }
        wanted = WantedWords.of(words.getText());
        WantedWords asked = wanted;
        if (asked.isEmpty()) {
            showFound(Optional.empty());
            return;
        }
        Job.createSystem("Looking in the help", (ICoreRunnable) monitor -> {
            List<HelpTopics.Topic> found = HelpTopics.holding(asked);
            ScrolledPage.later(page, () -> {
                if (asked.equals(wanted)) {
                    showFound(Optional.of(found));
                }
            });
        }).schedule();
    }

    /** @param found the pages that hold the words; absent shows the contents again */
    private void showFound(Optional<List<HelpTopics.Topic>> found) {
        Object chosen = topics.getStructuredSelection().getFirstElement();
        content.found = found;
        topics.refresh();
        said.setText(found.map(pages -> pages.isEmpty() ? "Nothing found. Try fewer words, or part of one."
                : pages.size() == 1 ? "1 page" : pages.size() + " pages").orElse(""));
        ((GridData) said.getLayoutData()).exclude = found.isEmpty();
        said.setVisible(found.isPresent());
        said.requestLayout();
        if (found.isPresent() && !found.get().isEmpty()) {
            topics.setSelection(new StructuredSelection(found.get().get(0)), true);
        } else if (found.isEmpty() && chosen instanceof HelpTopics.Topic topic) {
            select(topic.id());
        }
    }

    private void scrollTo(String heading) {
        String text = page.getText();
        int at = ("\n" + text).indexOf("\n" + heading + "\n");
        if (at >= 0) {
            page.setSelection(at, at + heading.length());
            page.setTopIndex(page.getLineAtOffset(at));
        }
    }

    /** The pages that were found, or the contents. */
    List<Object> listed() {
        return List.of(content.getElements(this));
    }

    /** The words that are marked on the page. */
    String markedText() {
        return page.getSelectionText();
    }

    /** The words of the page that is shown. */
    String shownText() {
        return page.getText();
    }

    private void select(String id) {
        if (content.found.isPresent()) {
            words.setText("");
            words.getDisplay().timerExec(-1, asking);
            wanted = WantedWords.of("");
            content.found = Optional.empty();
            topics.refresh();
            said.setVisible(false);
            ((GridData) said.getLayoutData()).exclude = true;
            said.requestLayout();
        }
        for (HelpTopics.Topic topic : HelpTopics.own()) {
            if (topic.id().equals(id)) {
                topics.setSelection(new StructuredSelection(topic), true);
                return;
            }
        }
        for (HelpTopics.Topic topic : HelpTopics.reference()) {
            if (topic.id().equals(id)) {
                topics.expandToLevel(REFERENCE, 1);
                topics.setSelection(new StructuredSelection(topic), true);
                return;
            }
        }
        HelpTopics.rules().forEach((group, headers) -> headers.stream().filter(header -> header.id().equals(id))
                .findFirst().ifPresent(header -> {
                    topics.expandToLevel(group, 1);
                    topics.setSelection(new StructuredSelection(header), true);
                }));
    }

    private void show(Object chosen) {
        String id = chosen instanceof HelpTopics.Topic topic ? topic.id()
                : chosen instanceof RuleHeader header ? header.id() : null;
        if (id != null) {
            HelpPage.show(HelpTopics.page(id).orElse("There is no page for " + id + "."), page);
            int[] first = wanted.firstIn(page.getText());
            if (first[1] > 0) {
                page.setSelection(first[0], first[0] + first[1]);
                page.showSelection();
            }
        }
    }

    @Override
    public void setFocus() {
        words.setFocus();
    }

    private static final class Content implements ITreeContentProvider {
        /** First steps, the tutorial and "How do I say" stand before the reference. */
        private static final int AFTER_HOW_TO = 3;

        private Optional<List<HelpTopics.Topic>> found = Optional.empty();

        @Override
        public Object[] getElements(Object input) {
            if (found.isPresent()) {
                return found.get().toArray();
            }
            List<Object> all = new java.util.ArrayList<>(HelpTopics.own());
            all.add(AFTER_HOW_TO, REFERENCE);
            all.addAll(HelpTopics.rules().keySet());
            return all.toArray();
        }

        @Override
        public Object[] getChildren(Object parent) {
            if (parent.equals(REFERENCE)) {
                return HelpTopics.reference().toArray();
            }
            Map<RuleHeader.Group, List<RuleHeader>> rules = HelpTopics.rules();
            return parent instanceof RuleHeader.Group group ? rules.get(group).toArray() : new Object[0];
        }

        @Override
        public Object getParent(Object element) {
            if (found.isPresent()) {
                return null;
            }
            if (element instanceof HelpTopics.Topic topic && HelpTopics.reference().contains(topic)) {
                return REFERENCE;
            }
            return element instanceof RuleHeader header ? header.group() : null;
        }

        @Override
        public boolean hasChildren(Object element) {
            return element instanceof RuleHeader.Group || element.equals(REFERENCE);
        }
    }

    private static final class Labels extends LabelProvider {
        @Override
        public String getText(Object element) {
            if (element instanceof RuleHeader.Group group) {
                return "Rules: " + group.title();
            }
            if (element instanceof HelpTopics.Topic topic) {
                return topic.title();
            }
            return element instanceof RuleHeader header ? header.summary() : element.toString();
        }
    }
}

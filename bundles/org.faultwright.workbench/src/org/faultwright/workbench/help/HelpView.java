/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.workbench.look.Spoken;

/** The help: pages about the work, and a page for each rule. */
public final class HelpView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.help";

    /** In pixels; below it, the topics stand above the page. */
    private static final int NARROW = 640;
    private static final String REFERENCE = "The language, word by word";

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
        return HelpTopics.rules().values().stream().flatMap(List::stream).filter(header -> header.id().equals(id))
                .map(RuleHeader::summary).findFirst().orElse(id);
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
        topics = new TreeViewer(halves, SWT.V_SCROLL | SWT.H_SCROLL);
        Spoken.as(topics.getControl(), "Pages of the help");
        topics.setContentProvider(new Content());
        topics.setLabelProvider(new Labels());
        topics.setInput(this);
        page = new StyledText(halves, SWT.V_SCROLL | SWT.WRAP | SWT.READ_ONLY | SWT.MULTI);
        Spoken.as(page, "Page of the help");
        page.setMargins(14, 10, 14, 10);
        page.setLineSpacing(3);
        halves.setWeights(32, 68);
        halves.addListener(SWT.Resize, event -> halves.setOrientation(
                halves.getClientArea().width < NARROW ? SWT.VERTICAL : SWT.HORIZONTAL));
        topics.addSelectionChangedListener(event -> show(event.getStructuredSelection().getFirstElement()));
        select(HelpTopics.FIRST);
    }

    /** The words of the page that is shown. */
    String shownText() {
        return page.getText();
    }

    private void select(String id) {
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
        }
    }

    @Override
    public void setFocus() {
        topics.getControl().setFocus();
    }

    private static final class Content implements ITreeContentProvider {
        /** First steps, the tutorial and "How do I say" stand before the reference. */
        private static final int AFTER_HOW_TO = 3;

        @Override
        public Object[] getElements(Object input) {
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

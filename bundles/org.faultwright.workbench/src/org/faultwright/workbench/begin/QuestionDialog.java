/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.language.beginning.InterviewProgress;
import org.faultwright.workbench.look.LabelledFields;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.TitledDialog;

/** Asks page by page; the text grows beside the answers, which stay when one goes back. */
abstract class QuestionDialog extends TitledDialog {
    static final String THROW_AWAY = "Throw the answers away?";
    private static final int BACK = IDialogConstants.BACK_ID;
    private static final int NEXT = IDialogConstants.NEXT_ID;
    private static final int WIDTH = 1320;
    private static final int HEIGHT = 780;
    private static final int TEXT_COLUMNS = 78;
    /** Of the width; some of the text stays in sight beside the widest page. */
    private static final int MOST_PERCENT = 88;

    private final List<QuestionPage> pages;
    private final List<ScrolledComposite> scrolls = new ArrayList<>();
    private final List<Runnable> toTell = new ArrayList<>();
    private Label way;
    private Label question;
    private Label problem;
    private SashForm halves;
    private Composite stack;
    private GrowingText text;
    private int shown;
    private boolean isTouched;

    QuestionDialog(Shell shell, String title, List<QuestionPage> pages) {
        super(shell, title);
        this.pages = List.copyOf(pages);
        setShellStyle(SWT.CLOSE | SWT.TITLE | SWT.BORDER | SWT.RESIZE | SWT.MAX | SWT.APPLICATION_MODAL | getDefaultOrientation());
    }

    /** What makes a text from the answers as they are now; run away from the window's thread. */
    abstract Supplier<InterviewProgress> growing();

    /** Puts the text where it belongs. @return whether it is there */
    abstract boolean write(InterviewProgress grown);

    @Override
    protected Point getInitialSize() {
        Rectangle screen = getShell().getMonitor().getClientArea();
        double letters = Math.max(1, CharacterWidth.width(getShell()) / 7);
        return new Point((int) Math.min(WIDTH * letters, screen.width - 40), (int) Math.min(HEIGHT * letters, screen.height - 60));
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = new Composite(parent, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(area);
        GridLayoutFactory.fillDefaults().margins(0, 0).spacing(0, 0).applyTo(area);
        halves = new SashForm(area, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(halves);
        Composite asking = new Composite(halves, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 4).applyTo(asking);
        Composite head = new Composite(asking, SWT.NONE);
        GridLayoutFactory.fillDefaults().margins(12, 8).spacing(0, 4).applyTo(head);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(head);
        way = wide(head);
        way.setForeground(Palette.now().of(Palette.Use.BESIDE));
        question = wide(head);
        question.setFont(JFaceResources.getHeaderFont());
        stack = new Composite(asking, SWT.NONE);
        stack.setLayout(new StackLayout());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(stack);
        for (QuestionPage page : pages) {
            ScrolledComposite scroll = new ScrolledComposite(stack, SWT.V_SCROLL | SWT.H_SCROLL);
            scroll.setExpandHorizontal(true);
            scroll.setExpandVertical(true);
            scroll.setShowFocusedControl(true);
            Composite body = LabelledFields.page(scroll);
            page.create(body, this);
            scroll.setContent(body);
            scroll.addListener(SWT.Resize, event -> fit(scroll));
            scrolls.add(scroll);
        }
        problem = new Label(asking, SWT.WRAP);
        problem.setForeground(Palette.now().of(Palette.Use.ERROR));
        GridDataFactory.fillDefaults().grab(true, false).indent(12, 0).hint(120, 2 * problem.computeSize(SWT.DEFAULT, SWT.DEFAULT).y).applyTo(problem);
        text = new GrowingText(halves, () -> toTell.forEach(Runnable::run));
        int asked = WIDTH - TEXT_COLUMNS * 7;
        halves.setWeights(asked, WIDTH - asked);
        return area;
    }

    private static Label wide(Composite in) {
        Label label = new Label(in, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).hint(120, SWT.DEFAULT).applyTo(label);
        return label;
    }

    private static void fit(ScrolledComposite scroll) {
        int least = scroll.getContent().computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
        scroll.setMinSize(least, scroll.getContent().computeSize(Math.max(least, scroll.getClientArea().width), SWT.DEFAULT).y);
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, BACK, "< &Back", false);
        createButton(parent, NEXT, "&Next >", true);
        createButton(parent, IDialogConstants.OK_ID, "&Write it", false);
        createButton(parent, IDialogConstants.CANCEL_ID, "Cancel", false);
        show(0);
        text.grow(growing());
    }

    /** After an answer. */
    void changed() {
        isTouched |= text != null;
        regrow();
    }

    /** After something that is no answer, such as a name that is only proposed. */
    void regrow() {
        if (text != null) {
            text.grow(growing());
            buttons();
        }
    }

    /** After a page has become longer or shorter. */
    void grown() {
        if (shown < scrolls.size()) {
            ((Composite) scrolls.get(shown).getContent()).layout(true, true);
            fit(scrolls.get(shown));
        }
    }

    /** What the answers have come to; absent while that is being worked out. */
    Optional<InterviewProgress> come() {
        return text == null ? Optional.empty() : text.come();
    }

    /** Called when the text has grown, so that what depends on it is told. */
    void whenGrown(Runnable told) {
        toTell.add(told);
    }

    void show(QuestionPage page) {
        show(pages.indexOf(page));
    }

    private void show(int number) {
        shown = number;
        QuestionPage page = pages.get(number);
        page.show();
        way.setText((number + 1) + " of " + pages.size() + "   " + page.name());
        question.setText(page.title());
        share(scrolls.get(number));
        ((StackLayout) stack.getLayout()).topControl = scrolls.get(number);
        stack.layout();
        grown();
        way.getParent().getParent().layout();
        buttons();
        page.setFocus();
        Control focus = getShell().getDisplay().getFocusControl();
        if (focus == null || !focus.isVisible()) {
            getButton(shown == pages.size() - 1 ? BACK : NEXT).setFocus();
        }
    }

    /** A page gets the width that it needs, and the text what is left. */
    private void share(ScrolledComposite page) {
        int whole = halves.getClientArea().width - halves.getSashWidth();
        if (whole > 0) {
            int usual = whole * (WIDTH - TEXT_COLUMNS * 7) / WIDTH;
            int needed = page.getContent().computeSize(SWT.DEFAULT, SWT.DEFAULT).x + page.getVerticalBar().getSize().x;
            int asked = Math.max(usual, Math.min(needed, whole * MOST_PERCENT / 100));
            halves.setWeights(asked, whole - asked);
            halves.layout();
        }
    }

    void buttons() {
        Button next = getButton(NEXT);
        if (next == null) {
            return;
        }
        boolean last = shown == pages.size() - 1;
        String why = pages.get(shown).problem();
        problem.setText(why.replace("&", "&&"));
        getButton(BACK).setEnabled(shown > 0);
        next.setEnabled(!last && why.isEmpty());
        Button write = getButton(IDialogConstants.OK_ID);
        write.setVisible(last);
        write.setEnabled(last && why.isEmpty() && come().isPresent());
        getShell().setDefaultButton(last ? write : next);
    }

    @Override
    protected void buttonPressed(int id) {
        if (id == BACK && shown > 0) {
            show(shown - 1);
        } else if (id == NEXT && shown < pages.size() - 1 && pages.get(shown).problem().isEmpty()) {
            show(shown + 1);
        } else {
            super.buttonPressed(id);
        }
    }

    @Override
    protected void okPressed() {
        if (come().filter(this::write).isPresent()) {
            super.okPressed();
        }
    }

    /** The title bar and Esc. */
    @Override
    protected void handleShellCloseEvent() {
        cancelPressed();
    }

    /** Nothing that was typed is lost without a question. */
    @Override
    protected void cancelPressed() {
        if (!isTouched || MessageDialog.open(MessageDialog.QUESTION, getShell(), THROW_AWAY, "The answers are kept nowhere else.",
                SWT.NONE, "Go on answering", "Throw away") == 1) {
            super.cancelPressed();
        }
    }

    @Override
    public boolean close() {
        if (text != null) {
            text.stop();
        }
        return super.close();
    }
}

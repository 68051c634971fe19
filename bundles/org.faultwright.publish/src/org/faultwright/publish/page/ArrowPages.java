/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.awt.Color;
import java.awt.Dimension;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import org.apache.fop.render.intermediate.IFDocumentHandler;
import org.apache.fop.render.intermediate.IFException;
import org.apache.fop.render.intermediate.IFPainter;
import org.apache.fop.render.intermediate.util.IFDocumentHandlerProxy;

/**
 * Takes the page out of an arrow that stays on its page. Only when the pages are painted is it known where everything stands,
 * so the words are written in a colour of their own and looked at on their way to the paper.
 */
final class ArrowPages extends IFDocumentHandlerProxy {
    /** Looks black; nothing else is printed in it. */
    static final String COLOUR = "#010203";
    private static final Color MARK = Color.decode(COLOUR);

    private String page = "";

    ArrowPages(IFDocumentHandler printer) {
        super(printer);
    }

    @Override
    public void startPage(int index, String name, String master, Dimension size) throws IFException {
        page = String.valueOf(index + 1);
        super.startPage(index, name, master, size);
    }

    @Override
    public IFPainter startPageContent() throws IFException {
        return (IFPainter) Proxy.newProxyInstance(ArrowPages.class.getClassLoader(), new Class<?>[] { IFPainter.class },
                new Painter(super.startPageContent())::paint);
    }

    /** Keeps the words before a number back until the number is there. */
    private final class Painter {
        private final IFPainter painter;
        private boolean marked;
        private Method held;
        private Object[] words;

        Painter(IFPainter painter) {
            this.painter = painter;
        }

        Object paint(Object proxy, Method method, Object[] arguments) throws Throwable {
            if (method.getName().equals("setFont")) {
                marked = MARK.equals(arguments[arguments.length - 1]);
            } else if (method.getName().equals("drawText") && marked) {
                return word(method, arguments);
            }
            return pass(method, arguments);
        }

        private Object word(Method method, Object[] arguments) throws Throwable {
            String text = ((String) arguments[5]).strip();
            if (text.isEmpty() || !Character.isDigit(text.charAt(0))) {
                held = method;
                words = arguments;
                return null;
            }
            if (!text.equals(page)) {
                if (held != null) {
                    pass(held, words);
                }
                pass(method, arguments);
            }
            held = null;
            return null;
        }

        private Object pass(Method method, Object[] arguments) throws Throwable {
            try {
                return method.invoke(painter, arguments);
            } catch (InvocationTargetException thrown) {
                throw thrown.getCause();
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.io.File;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.widgets.Display;
import org.junit.jupiter.api.extension.AfterTestExecutionCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Keeps a picture of the screen under target/screenshots when a test has failed. */
public final class KeepPicture implements AfterTestExecutionCallback {
    @Override
    public void afterTestExecution(ExtensionContext context) {
        Optional<Throwable> failure = context.getExecutionException();
        if (failure.isPresent()) {
            File folder = new File(System.getProperty("basedir", "."), "target/screenshots");
            folder.mkdirs();
            save(new File(folder, context.getRequiredTestClass().getSimpleName() + "." + context.getRequiredTestMethod().getName()
                    + ".png"));
        }
    }

    private static void save(File file) {
        Display display = Display.getCurrent();
        Image image = new Image(display, display.getBounds().width, display.getBounds().height);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, 0, 0);
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {image.getImageData()};
            loader.save(file.getPath(), SWT.IMAGE_PNG);
        } finally {
            gc.dispose();
            image.dispose();
        }
    }
}

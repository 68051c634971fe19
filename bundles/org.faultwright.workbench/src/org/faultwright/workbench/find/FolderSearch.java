/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.faultwright.workbench.live.FolderDocuments;

/** Looks through every file of the open folders away from the window's thread, and tells what it has found from time to time. */
final class FolderSearch extends Job {
    private static final long MILLISECONDS_BETWEEN_NEWS = 120;

    /**
     * What there is since the last news.
     *
     * @param found   files with something in them, or something to be said about them
     * @param through how many files have been looked through in all
     * @param all     how many there are
     * @param ended   whether this is the last news; of one that was stopped too
     */
    record News(FolderSearch from, List<FoundInFile> found, int through, int all, boolean ended) {
        boolean isStopped() {
            return ended && through < all;
        }
    }

    private final SearchQuery looked;
    private final Consumer<News> told;

    FolderSearch(SearchQuery looked, Consumer<News> told) {
        super("Looking through the procedures");
        setSystem(true);
        this.looked = looked;
        this.told = told;
    }

    SearchQuery looked() {
        return looked;
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        List<IFile> files = FolderDocuments.files().stream().sorted(Comparator.comparing(file -> file.getFullPath().toString())).toList();
        List<FoundInFile> news = new ArrayList<>();
        long last = System.currentTimeMillis();
        int through = 0;
        for (IFile file : files) {
            if (monitor.isCanceled()) {
                break;
            }
            FoundInFile found = FoundInFile.of(file, looked);
            through++;
            if (!found.places().isEmpty() || found.remark().isPresent()) {
                news.add(found);
            }
            if (System.currentTimeMillis() - last > MILLISECONDS_BETWEEN_NEWS) {
                told.accept(new News(this, List.copyOf(news), through, files.size(), false));
                news.clear();
                last = System.currentTimeMillis();
            }
        }
        told.accept(new News(this, List.copyOf(news), through, files.size(), true));
        return Status.OK_STATUS;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import com.google.inject.Injector;
import org.eclipse.emf.ecore.EPackage;
import org.faultwright.language.text.TextPackage;

/** Sets the editing services up where no Eclipse runs. */
public class ProcedureStandaloneSetup extends ProcedureStandaloneSetupGenerated {
    @Override
    public Injector createInjectorAndDoEMFRegistration() {
        EPackage.Registry.INSTANCE.putIfAbsent(TextPackage.eNS_URI, TextPackage.eINSTANCE);
        return super.createInjectorAndDoEMFRegistration();
    }

    public static void doSetup() {
        new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration();
    }
}

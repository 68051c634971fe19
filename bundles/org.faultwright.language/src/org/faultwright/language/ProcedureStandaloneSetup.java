/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

/** Sets the editing services up where no Eclipse runs. */
public class ProcedureStandaloneSetup extends ProcedureStandaloneSetupGenerated {
    public static void doSetup() {
        new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration();
    }
}

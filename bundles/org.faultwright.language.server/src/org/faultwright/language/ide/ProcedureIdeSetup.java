/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.ide;

import com.google.inject.Guice;
import com.google.inject.Injector;
import org.eclipse.xtext.util.Modules2;
import org.faultwright.language.ProcedureRuntimeModule;
import org.faultwright.language.ProcedureStandaloneSetup;

/**
 * Initialization support for running Xtext languages as language servers.
 */
public class ProcedureIdeSetup extends ProcedureStandaloneSetup {

	@Override
	public Injector createInjector() {
		return Guice.createInjector(Modules2.mixin(new ProcedureRuntimeModule(), new ProcedureIdeModule()));
	}
	
}

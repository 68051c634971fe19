/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.ide;


/**
 * Use this class to register ide components.
 */
public class ProcedureIdeModule extends AbstractProcedureIdeModule {
}

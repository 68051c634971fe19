/*
 * Generated from the grammar: do not edit.
 */
package org.faultwright.language.ide;


/**
 * Use this class to register ide components.
 */
public class ProcedureIdeModule extends AbstractProcedureIdeModule {
}

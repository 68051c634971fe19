/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

/** The text that a new procedure begins with: short, whole, and to be written over. */
final class NewProcedure {
    private NewProcedure() {
    }

    static String text(String name) {
        return """
                procedure %s "What is seen, in a few words"

                equipment "Maker and model" boards "A"
                revision 1 draft
                complaints "as the customer put it"

                fault FirstCause "What may be broken" {
                    cases 1
                    shows  SeeIt asReported, Repaired yes
                    remedy Mend
                }

                begin at SeeIt

                check SeeIt "Try it. Does it do what was reported?" {
                    confirms complaint
                    takes 2 min
                    asReported  -> Mend
                    worksWell   -> NotSeen
                }

                do Mend "What puts it right" {
                    takes 5 min
                    then -> Repaired
                }

                check Repaired "Try it again, three times. Does it work every time?" {
                    verifies repair
                    takes 3 min
                    yes -> Found
                    no  -> HandOn
                }

                conclude Found "Found and repaired" {
                    finds FirstCause
                    report "What was wrong and what was done."
                }

                conclude NotSeen "Complaint not seen" {
                    finds nothing
                    report "Tried as described; the fault did not show."
                }

                conclude HandOn "Not solved here" {
                    refers to "the senior technician"
                    report "What was tried, with the readings."
                }

                example "As reported, then repaired" of FirstCause {
                    SeeIt asReported, Mend done, Repaired yes
                    ends at Found within 15 min
                }
                """.formatted(name);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.rules.AcDcMixed;
import org.faultwright.analysis.rules.AlreadySet;
import org.faultwright.analysis.rules.AmbiguityGroup;
import org.faultwright.analysis.rules.BeyondThePoint;
import org.faultwright.analysis.rules.BleedLeadUnfit;
import org.faultwright.analysis.rules.CalculatedOtherwise;
import org.faultwright.analysis.rules.CalibrationExpired;
import org.faultwright.analysis.rules.CasesMissing;
import org.faultwright.analysis.rules.CasesOfZero;
import org.faultwright.analysis.rules.CategoryTooLow;
import org.faultwright.analysis.rules.ChangedAfterRelease;
import org.faultwright.analysis.rules.ChargeNeverReturns;
import org.faultwright.analysis.rules.ChargeNotProvedAbsent;
import org.faultwright.analysis.rules.CodeUnknown;
import org.faultwright.analysis.rules.CodesNotHandled;
import org.faultwright.analysis.rules.ComplaintNotConfirmed;
import org.faultwright.analysis.rules.ConclusionWithoutFinding;
import org.faultwright.analysis.rules.ContradictoryNeeds;
import org.faultwright.analysis.rules.CurrentAcrossPoint;
import org.faultwright.analysis.rules.DayInTheFuture;
import org.faultwright.analysis.rules.DivisionByZeroPossible;
import org.faultwright.analysis.rules.DoubtfulUnhandled;
import org.faultwright.analysis.rules.DuplicateName;
import org.faultwright.analysis.rules.DuplicateResult;
import org.faultwright.analysis.rules.EmptyOutcomes;
import org.faultwright.analysis.rules.EndingNotSaid;
import org.faultwright.analysis.rules.EraseWithoutBackupCheck;
import org.faultwright.analysis.rules.ExampleFails;
import org.faultwright.analysis.rules.ExampleNamesUnknownResult;
import org.faultwright.analysis.rules.ExampleTimeExceeded;
import org.faultwright.analysis.rules.ExpectedOutsideBands;
import org.faultwright.analysis.rules.FailedTestPassed;
import org.faultwright.analysis.rules.FaultMissesConclusion;
import org.faultwright.analysis.rules.FaultNeverConcluded;
import org.faultwright.analysis.rules.FaultSignatureResultUnknown;
import org.faultwright.analysis.rules.FaultWithoutSignature;
import org.faultwright.analysis.rules.FinerThanResolution;
import org.faultwright.analysis.rules.HoleBetweenBands;
import org.faultwright.analysis.rules.IncompleteNote;
import org.faultwright.analysis.rules.InputRatingTooLow;
import org.faultwright.analysis.rules.InstrumentCannotDecide;
import org.faultwright.analysis.rules.InstrumentLacksFunction;
import org.faultwright.analysis.rules.InstrumentNotNamed;
import org.faultwright.analysis.rules.IsolationUnfounded;
import org.faultwright.analysis.rules.LeftOpen;
import org.faultwright.analysis.rules.LibraryNameDiffersFromFile;
import org.faultwright.analysis.rules.LimitsReversed;
import org.faultwright.analysis.rules.LiveMeasurement;
import org.faultwright.analysis.rules.LiveReasonIdle;
import org.faultwright.analysis.rules.LiveStateUnsaid;
import org.faultwright.analysis.rules.LiveToolUnfit;
import org.faultwright.analysis.rules.LiveWork;
import org.faultwright.analysis.rules.LoadingEatsTolerance;
import org.faultwright.analysis.rules.LoopChangesNothing;
import org.faultwright.analysis.rules.MeanRespondingMeter;
import org.faultwright.analysis.rules.MissingHeader;
import org.faultwright.analysis.rules.MissingSource;
import org.faultwright.analysis.rules.MissingTime;
import org.faultwright.analysis.rules.MissingTitle;
import org.faultwright.analysis.rules.MissingUnit;
import org.faultwright.analysis.rules.NeedNotEstablished;
import org.faultwright.analysis.rules.NegativeAmount;
import org.faultwright.analysis.rules.NoConclusion;
import org.faultwright.analysis.rules.NonsenseAccuracy;
import org.faultwright.analysis.rules.NoteAfterNeed;
import org.faultwright.analysis.rules.NoteNeverRead;
import org.faultwright.analysis.rules.NothingFoundWrongly;
import org.faultwright.analysis.rules.OtherwiseClaims;
import org.faultwright.analysis.rules.OutcomeAlreadyKnown;
import org.faultwright.analysis.rules.OutcomeImpossible;
import org.faultwright.analysis.rules.OutcomeNoFaultExplains;
import org.faultwright.analysis.rules.OutcomeUntried;
import org.faultwright.analysis.rules.OutcomesIncomplete;
import org.faultwright.analysis.rules.OutsideBandwidth;
import org.faultwright.analysis.rules.OverlappingBands;
import org.faultwright.analysis.rules.PathWithoutEnd;
import org.faultwright.analysis.rules.PercentageOfZero;
import org.faultwright.analysis.rules.PictureUnusable;
import org.faultwright.analysis.rules.PointAgainstItself;
import org.faultwright.analysis.rules.ProofBandOpen;
import org.faultwright.analysis.rules.ProofElsewhere;
import org.faultwright.analysis.rules.ProofMeterUntried;
import org.faultwright.analysis.rules.ProofNotMeasured;
import org.faultwright.analysis.rules.ProtectionLimitLoose;
import org.faultwright.analysis.rules.ProtectionNotTested;
import org.faultwright.analysis.rules.QuestionAboutOtherData;
import org.faultwright.analysis.rules.RangeExceeded;
import org.faultwright.analysis.rules.ReadWithoutSupply;
import org.faultwright.analysis.rules.ReadingImpossible;
import org.faultwright.analysis.rules.ReadingNotTaken;
import org.faultwright.analysis.rules.ReleaseIncomplete;
import org.faultwright.analysis.rules.RemedyMissing;
import org.faultwright.analysis.rules.RemedyNotDone;
import org.faultwright.analysis.rules.RemedyRepairsNothing;
import org.faultwright.analysis.rules.RepairNotVerified;
import org.faultwright.analysis.rules.RoutineRecursion;
import org.faultwright.analysis.rules.SignalWordFit;
import org.faultwright.analysis.rules.SignatureSharesNot100;
import org.faultwright.analysis.rules.SingleValued;
import org.faultwright.analysis.rules.StateBoundReached;
import org.faultwright.analysis.rules.StepShownTwice;
import org.faultwright.analysis.rules.StepTellsNothing;
import org.faultwright.analysis.rules.StoredChargeUnsaid;
import org.faultwright.analysis.rules.TableOutcomes;
import org.faultwright.analysis.rules.TakesLessThanWait;
import org.faultwright.analysis.rules.TestedUntilPassed;
import org.faultwright.analysis.rules.ToleranceBeyondNominal;
import org.faultwright.analysis.rules.ToleranceSidesDiffer;
import org.faultwright.analysis.rules.UnboundedLoop;
import org.faultwright.analysis.rules.UnitDeviationMissing;
import org.faultwright.analysis.rules.UnknownName;
import org.faultwright.analysis.rules.UnknownUnit;
import org.faultwright.analysis.rules.UnreachableOutcome;
import org.faultwright.analysis.rules.UnreachableStep;
import org.faultwright.analysis.rules.UnreadableText;
import org.faultwright.analysis.rules.UnusedDeclaration;
import org.faultwright.analysis.rules.UnusedExit;
import org.faultwright.analysis.rules.UnusedReading;
import org.faultwright.analysis.rules.UsedOutsideItsValidity;
import org.faultwright.analysis.rules.WaitTooShort;
import org.faultwright.analysis.rules.WrongDimension;
import org.faultwright.analysis.rules.WrongFormula;
import org.faultwright.analysis.rules.ZeroWidthTolerance;

/** Every rule there is, in the order of the index. Listings are built from this list alone. */
public final class RuleSet {
    private static final List<Rule> ALL = Stream.of(names(), quantities(), instruments(), paths(), state(), safety(),
            faults(), examples(), record()).flatMap(List::stream).toList();

    private RuleSet() {
    }

    public static List<Rule> all() {
        return ALL;
    }

    private static List<Rule> names() {
        return List.of(
                new UnreadableText(),
                new UnknownName(),
                new CodeUnknown(),
                new DuplicateName(),
                new DuplicateResult(),
                new LibraryNameDiffersFromFile(),
                new MissingTitle(),
                new UnusedDeclaration());
    }

    private static List<Rule> quantities() {
        return List.of(
                new MissingUnit(),
                new UnknownUnit(),
                new WrongDimension(),
                new AcDcMixed(),
                new WrongFormula(),
                new DivisionByZeroPossible(),
                new LimitsReversed(),
                new ZeroWidthTolerance(),
                new PercentageOfZero(),
                new ToleranceBeyondNominal(),
                new ToleranceSidesDiffer(),
                new NegativeAmount(),
                new TakesLessThanWait(),
                new PictureUnusable(),
                new HoleBetweenBands(),
                new OverlappingBands(),
                new ExpectedOutsideBands(),
                new BeyondThePoint());
    }

    private static List<Rule> instruments() {
        return List.of(
                new InstrumentNotNamed(),
                new InstrumentLacksFunction(),
                new CurrentAcrossPoint(),
                new PointAgainstItself(),
                new RangeExceeded(),
                new CategoryTooLow(),
                new InputRatingTooLow(),
                new InstrumentCannotDecide(),
                new DoubtfulUnhandled(),
                new UnitDeviationMissing(),
                new FinerThanResolution(),
                new LoadingEatsTolerance(),
                new OutsideBandwidth(),
                new MeanRespondingMeter(),
                new UsedOutsideItsValidity(),
                new NonsenseAccuracy(),
                new CalibrationExpired());
    }

    private static List<Rule> paths() {
        return List.of(
                new NoConclusion(),
                new EmptyOutcomes(),
                new OutcomesIncomplete(),
                new OtherwiseClaims(),
                new TableOutcomes(),
                new OutcomeImpossible(),
                new CodesNotHandled(),
                new SingleValued(),
                new UnusedReading(),
                new ReadingNotTaken(),
                new UnreachableStep(),
                new PathWithoutEnd(),
                new UnboundedLoop(),
                new UnusedExit(),
                new RoutineRecursion(),
                new UnreachableOutcome(),
                new LoopChangesNothing(),
                new ComplaintNotConfirmed(),
                new RepairNotVerified(),
                new TestedUntilPassed(),
                new StateBoundReached());
    }

    private static List<Rule> state() {
        return List.of(
                new NeedNotEstablished(),
                new LiveMeasurement(),
                new LiveWork(),
                new LiveToolUnfit(),
                new LiveReasonIdle(),
                new ChargeNotProvedAbsent(),
                new ProofNotMeasured(),
                new ProofElsewhere(),
                new ProofBandOpen(),
                new ProofMeterUntried(),
                new ChargeNeverReturns(),
                new StoredChargeUnsaid(),
                new LiveStateUnsaid(),
                new ReadWithoutSupply(),
                new IsolationUnfounded(),
                new WaitTooShort(),
                new BleedLeadUnfit(),
                new LeftOpen(),
                new EndingNotSaid(),
                new ContradictoryNeeds(),
                new AlreadySet());
    }

    private static List<Rule> safety() {
        return List.of(
                new NoteNeverRead(),
                new NoteAfterNeed(),
                new EraseWithoutBackupCheck(),
                new QuestionAboutOtherData(),
                new ProtectionNotTested(),
                new ProtectionLimitLoose(),
                new FailedTestPassed(),
                new SignalWordFit(),
                new IncompleteNote());
    }

    private static List<Rule> faults() {
        return List.of(
                new FaultMissesConclusion(),
                new FaultNeverConcluded(),
                new FaultSignatureResultUnknown(),
                new FaultWithoutSignature(),
                new SignatureSharesNot100(),
                new CasesMissing(),
                new CasesOfZero(),
                new StepShownTwice(),
                new RemedyMissing(),
                new RemedyRepairsNothing(),
                new RemedyNotDone(),
                new AmbiguityGroup(),
                new OutcomeNoFaultExplains(),
                new StepTellsNothing(),
                new OutcomeAlreadyKnown(),
                new MissingTime(),
                new BetterOrder(),
                new ConclusionWithoutFinding(),
                new NothingFoundWrongly());
    }

    private static List<Rule> examples() {
        return List.of(
                new ExampleFails(),
                new CalculatedOtherwise(),
                new ExampleNamesUnknownResult(),
                new ExampleTimeExceeded(),
                new ReadingImpossible(),
                new OutcomeUntried());
    }

    private static List<Rule> record() {
        return List.of(
                new MissingHeader(),
                new MissingSource(),
                new ReleaseIncomplete(),
                new DayInTheFuture(),
                new ChangedAfterRelease());
    }

    /** Those that an editor can run at every key. */
    public static List<Rule> quick() {
        return ALL.stream().filter(rule -> !rule.takesLong()).toList();
    }

    /** Those that an editor runs in a pause. */
    public static List<Rule> forAPause() {
        return ALL.stream().filter(Rule::takesLong).toList();
    }
}

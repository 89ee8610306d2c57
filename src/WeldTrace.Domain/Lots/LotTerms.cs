using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Lots;

/// <summary>State of a production lot.</summary>
public enum LotState
{
    /// <summary>Vessels are gathered; no sample is chosen, so nothing is welded.</summary>
    Gathering,

    /// <summary>The samples are chosen and their results awaited.</summary>
    Sampling,

    /// <summary>A sample did not pass; every vessel is held.</summary>
    Failed,

    /// <summary>All samples passed, and the lot is accepted by signature.</summary>
    Accepted,
}

/// <summary>What the vessels of a lot have in common.</summary>
/// <param name="Procedure">Welding procedure revision.</param>
/// <param name="ToolDesign">Design of the tools, as the procedure names it.</param>
/// <param name="Machine">Machine; null when any may be used.</param>
/// <param name="MaterialLot">Lot of material from which a component of each is cut; null when they may differ.</param>
/// <param name="From">First day of welding.</param>
/// <param name="Until">Last day of welding.</param>
public sealed record LotRule(
    RecordName Procedure,
    RecordName ToolDesign,
    RecordName? Machine,
    RecordName? MaterialLot,
    DateOnly From,
    DateOnly Until
);

/// <summary>A vessel sacrificed for its lot.</summary>
/// <param name="Kind">What for.</param>
/// <param name="VesselId">Vessel.</param>
/// <param name="Serial">Its serial.</param>
/// <param name="Choice">How it was chosen.</param>
/// <param name="Reason">Why this one; null when the design's way of choosing decides.</param>
public sealed record LotSample(
    SampleKind Kind,
    Guid VesselId,
    string Serial,
    SampleChoice Choice,
    string? Reason
);

/// <summary>What a signed test of a sample showed.</summary>
/// <param name="Kind">Kind of sample.</param>
/// <param name="VesselId">Vessel.</param>
/// <param name="Serial">Its serial.</param>
/// <param name="Test">The record of the test.</param>
/// <param name="Verdict">Verdict; anything but a pass holds the lot.</param>
/// <param name="Sentence">The verdict in a sentence.</param>
/// <param name="Burst">Burst pressure, gauge; null for a section.</param>
/// <param name="At">UTC instant of the signature.</param>
public sealed record SampleResult(
    SampleKind Kind,
    Guid VesselId,
    string Serial,
    RecordName Test,
    Verdict Verdict,
    string Sentence,
    Pressure? Burst,
    DateTimeOffset At
);

/// <summary>What a signed laboratory test showed that stands for the lot.</summary>
/// <param name="Sample">Mark of the sample or test piece.</param>
/// <param name="Method">Test in words, as "transverse tensile".</param>
/// <param name="Test">The record of the test.</param>
/// <param name="Verdict">Verdict; anything but a pass holds the lot.</param>
/// <param name="Sentence">The verdict in a sentence.</param>
/// <param name="At">UTC instant of the signature.</param>
public sealed record LaboratoryResult(
    string Sample,
    string Method,
    RecordName Test,
    Verdict Verdict,
    string Sentence,
    DateTimeOffset At
);

/// <summary>A test that can serve as the destructive sample of a lot.</summary>
public interface ISampleTest
{
    /// <summary>What it says as a sample, once it is signed; null when it is no destructive one.</summary>
    SampleResult? AsSample();
}

/// <summary>The part that a vessel has in its lot's samples.</summary>
/// <param name="Kind">What it is sacrificed for.</param>
/// <param name="LotNumber">Number of the lot.</param>
public sealed record SampleDuty(SampleKind Kind, string LotNumber);

/// <summary>The signed acceptance of a lot.</summary>
/// <param name="PersonId">Who accepted.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
/// <param name="Statement">What was shown.</param>
public sealed record LotAcceptance(
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At,
    LotStatement Statement
);

/// <summary>What the samples and proof tests of a lot show, in figures and sentences.</summary>
/// <param name="Coverage">Part of the vessels that the burst bound speaks of.</param>
/// <param name="Confidence">Confidence of bound and reliability.</param>
/// <param name="Bursts">Burst pressures, gauge, in the order of testing.</param>
/// <param name="LeastBurst">Burst pressure that the design asks for; null when it asks for none.</param>
/// <param name="BurstBound">Lower one-sided tolerance bound; null when fewer than two vessels were burst.</param>
/// <param name="ProofsPassed">Vessels of the lot that passed their proof test.</param>
/// <param name="ProofsFailed">Vessels of the lot that did not.</param>
/// <param name="ProofReliability">Reliability shown by the proof tests; null when there was none, or one failed.</param>
/// <param name="Sentences">The same in words.</param>
public sealed record LotStatement(
    decimal Coverage,
    decimal Confidence,
    IReadOnlyList<Pressure> Bursts,
    Pressure? LeastBurst,
    Pressure? BurstBound,
    int ProofsPassed,
    int ProofsFailed,
    double? ProofReliability,
    IReadOnlyList<string> Sentences
);

using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Qualification;

/// <summary>The qualification record behind a procedure revision, as the revision keeps it.</summary>
/// <param name="Id">Qualification record.</param>
/// <param name="Number">Its number.</param>
/// <param name="SignedAt">UTC instant of its signature.</param>
/// <param name="Range">What it covers.</param>
public sealed record QualifiedBy(
    Guid Id,
    string Number,
    DateTimeOffset SignedAt,
    QualificationRange Range
);

/// <summary>Whether a qualification record supports a procedure revision.</summary>
public static class ProcedureSupport
{
    private const string Source =
        "Ship-classification rules, July 2022, Ch. 12 6.3.2-6.3.6; NASA-STD-5006A w/Change 2 GWR 45, 46";

    /// <summary>Everything against it, each essential variable that has left the range by name; empty when it does.</summary>
    public static IReadOnlyList<Refusal> Against(
        ProcedureRevision revision,
        QualificationRecord? record
    )
    {
        ArgumentNullException.ThrowIfNull(revision);
        return record switch
        {
            null =>
            [
                Refusal(
                    "wpqr",
                    $"{revision.Label} has no qualification record; plan it, weld and test the pieces, and sign it."
                ),
            ],
            { Range: null } =>
            [
                Refusal(
                    "wpqr",
                    $"{record.Number} is {QualificationRecord.StateWord(record.State)}; only a complete and signed qualification record counts."
                ),
            ],
            { Range: { } range } =>
            [
                .. range
                    .Against(revision.Content)
                    .Select(a =>
                        Refusal(
                            "requalify",
                            $"{a} {record.Number} doesn't cover this any more: {revision.Label} must be qualified anew."
                        )
                    ),
            ],
        };
    }

    private static Refusal Refusal(string code, string sentence) =>
        new(code, sentence, null, Source);
}

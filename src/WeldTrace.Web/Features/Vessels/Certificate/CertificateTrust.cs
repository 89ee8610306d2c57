using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Certificate;

/// <summary>Lot, findings, concessions, people, instruments and signatures, as the certificate prints them.</summary>
internal static class CertificateTrust
{
    public static IEnumerable<SheetPart> Of(CertificateSource source)
    {
        var history = source.History;
        if (history.Lot is { } lot)
        {
            yield return Lot(lot);
        }

        yield return Findings(history);
        yield return Concessions(history);
        yield return People(source);
        yield return Instruments(history);
    }

    public static IEnumerable<SignatureEntry> Signatures(VesselHistory history)
    {
        var labels = history.Records.ToDictionary(r => r.Id, r => r.Label);
        if (history.Lot is { } lot)
        {
            labels[lot.Id] = $"lot {lot.Number}";
        }

        return history.Signatures.Select(s => new SignatureEntry(
            s.PrintedName,
            s.Meaning,
            s.At,
            FormattableString.Invariant(
                $"{labels.GetValueOrDefault(s.SignedId, s.SignedKind)}, version {s.SignedVersion}"
            ),
            s.SignedSha256
        ));
    }

    private static SheetPart Lot(ProductionLot lot) =>
        new($"Production lot {lot.Number}")
        {
            Sentences = lot.Acceptance is { } acceptance
                ? acceptance.Statement.Sentences
                : [$"The lot: {ProductionLot.StateWord(lot.State)}."],
            Table = new SheetTable(
                [("Sample", 20), ("For", 16), ("What it showed", 60)],
                [
                    .. lot.Samples.Select(s => new SheetRow(
                        [
                            s.Serial,
                            SamplePlan.KindWord(s.Kind),
                            lot.ResultOf(s)?.Sentence ?? "awaited",
                        ],
                        PrintedMarks.Of(
                            DomainMarks.Of(lot.ResultOf(s)?.Verdict),
                            TestRecord.VerdictWord(lot.ResultOf(s)?.Verdict)
                        )
                    )),
                ]
            ),
        };

    private static SheetPart Findings(VesselHistory history) =>
        new("Findings")
        {
            Sentences = history.Findings.Count == 0 ? ["None is recorded."] : [],
            Table = new SheetTable(
                [("Finding", 12), ("What was found", 46), ("Decision", 14), ("Reason", 34)],
                [
                    .. history.Findings.Select(f => new SheetRow(
                        [
                            f.Label,
                            f.Description,
                            f.Disposition is { } d ? Finding.DispositionWord(d.Kind) : null,
                            f.Disposition?.Reason,
                        ],
                        PrintedMarks.Of(DomainMarks.Of(f.State), Finding.StateWord(f.State))
                    )),
                ]
            ),
        };

    private static SheetPart Concessions(VesselHistory history)
    {
        var granted = history.Concessions.Where(c => c.State == ConcessionState.Granted).ToList();
        return new SheetPart("Concessions")
        {
            Sentences = granted.Count == 0 ? ["None is granted."] : [],
            Table = new SheetTable(
                [("Rule", 8), ("What it said", 46), ("Why it was waived", 34), ("Granted by", 24)],
                [
                    .. granted.Select(c => new SheetRow([
                        c.RuleId,
                        c.Forbids,
                        c.Reason,
                        $"{c.AskedBy.PrintedName}, {c.DecidedBy!.PrintedName}",
                    ])),
                ]
            ),
        };
    }

    private static SheetPart People(CertificateSource source) =>
        new("People")
        {
            Table = new SheetTable(
                [("Name", 24), ("Did", 22), ("Certificates, with the day on which each ends", 60)],
                [
                    .. source.People.Select(p => new SheetRow([
                        p.Name,
                        p.Did,
                        p.Certificates.Count == 0
                            ? "none on record"
                            : string.Join(
                                ", ",
                                p.Certificates.Select(c => $"{c.Number} ({Day(c.EndsOn)})")
                            ),
                    ])),
                ]
            ),
        };

    private static SheetPart Instruments(VesselHistory history)
    {
        IEnumerable<TestRecord> tests =
        [
            .. history.LeakTests,
            .. history.PressureTests,
            .. history.Sections,
        ];
        return new SheetPart("Instruments of the tests")
        {
            Table = new SheetTable(
                [("Instrument", 24), ("Calibrated until", 22), ("Used at step", 20)],
                [
                    .. tests
                        .SelectMany(t =>
                            (t.Instruments ?? []).Select(i =>
                                (Used: i, Where: FormattableString.Invariant($"{t.StepSequence}"))
                            )
                        )
                        .Concat(
                            history.Laboratory.SelectMany(t =>
                                t.Instruments.Select(i => (Used: i, Where: "laboratory"))
                            )
                        )
                        .GroupBy(i => (i.Used.Mark, i.Used.CalibratedUntil))
                        .OrderBy(g => g.Key.Mark, StringComparer.Ordinal)
                        .Select(g => new SheetRow([
                            g.Key.Mark,
                            Day(g.Key.CalibratedUntil),
                            string.Join(", ", g.Select(i => i.Where).Distinct()),
                        ])),
                ]
            ),
        };
    }

    public static string Day(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

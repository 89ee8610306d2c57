using WeldTrace.Documents;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Certificate;

/// <summary>Material, welds, tests and their limits, as the certificate prints them.</summary>
internal static class CertificateParts
{
    public static IEnumerable<LabelledValue> Particulars(VesselHistory history)
    {
        var content = history.Design.Content;
        yield return new("Design", $"{history.Design.Label}, {history.Design.Title}");
        yield return new("Material", $"{content.Alloy}-{content.Temper}");
        yield return new(
            "Production lot",
            history.Lot is { } lot
                ? $"{lot.Number}, {Domain.Lots.ProductionLot.StateWord(lot.State)}"
                : history.Vessel.ProductionLot
        );
        var accepted = history.SignOffs.LastOrDefault(s =>
            s.StepKind == Domain.VesselDesigns.StepKind.Acceptance
        );
        yield return new("Accepted by", accepted?.PrintedName);
    }

    public static IEnumerable<SheetPart> Of(CertificateSource source) =>
        [
            Components(source.History),
            Welds(source),
            Tests(source),
            Laboratory(source.History),
            Limits(source),
        ];

    private static SheetPart Components(VesselHistory history) =>
        new("Components")
        {
            Table = new SheetTable(
                [
                    ("Component", 20),
                    ("Serial", 18),
                    ("Lot", 16),
                    ("Cast", 16),
                    ("Inspection document", 34),
                ],
                [
                    .. history.Vessel.Components.Select(c => new SheetRow([
                        c.Name,
                        c.Serial,
                        c.MaterialLotNumber,
                        c.CastNumber,
                        history.Material.Lots.FirstOrDefault(l => l.Id == c.MaterialLotId)
                            is { } lot
                            ? $"{(lot.Document is { } d ? InspectionDocuments.Word(d.Type) : "not filed")}, {lot.CertificateNumber}"
                            : null,
                    ])),
                ]
            ),
        };

    private static SheetPart Welds(CertificateSource source) =>
        new("Weld runs")
        {
            Table = new SheetTable(
                [
                    ("Joint, pass", 14),
                    ("Procedure", 18),
                    ("Machine", 18),
                    ("Tool", 13),
                    ("Operator", 18),
                    ("Ended", 18),
                    ("Outside window", 12),
                ],
                [
                    .. source.History.Runs.Select(r => new SheetRow(
                        [
                            $"{r.JointCode}, {r.PassNumber}"
                                + (
                                    r.Repair is { } repair
                                        ? $", repair of {repair.Finding.Label}"
                                        : ""
                                ),
                            r.ProcedureLabel,
                            r.MachineName,
                            r.ToolMark,
                            r.OperatorName,
                            r.EndedAt is { } at ? source.Site.Show(at) : null,
                            r.Log is { } log
                                ? FormattableString.Invariant($"{log.HardExcursions.Count}")
                                : null,
                        ],
                        PrintedMarks.Of(DomainMarks.Of(r.State), WeldRun.StateWord(r.State))
                    )),
                ]
            ),
        };

    private static SheetPart Tests(CertificateSource source)
    {
        var history = source.History;
        IEnumerable<(int Step, SheetRow Row)> rows =
        [
            .. history.LeakTests.Select(t => (t.StepSequence, Test(t, "Leak test", source))),
            .. history.PressureTests.Select(t =>
                (t.StepSequence, Test(t, "Pressure test", source))
            ),
            .. history.Sections.Select(t => (t.StepSequence, Test(t, "Section", source))),
            .. history.SignOffs.Select(s =>
                (
                    s.StepSequence,
                    new SheetRow(
                        [
                            FormattableString.Invariant($"{s.StepSequence}"),
                            s.Title,
                            s.Text,
                            s.PrintedName,
                            source.Site.Show(s.At),
                        ],
                        s.Examination is { Rejected.Count: > 0 }
                            ? new StateMark("rejected", MarkShape.Cross)
                            : new StateMark("signed", MarkShape.Disc)
                    )
                )
            ),
        ];
        return new SheetPart("Tests and examinations")
        {
            Table = new SheetTable(
                [("Step", 8), ("Method", 18), ("Result", 46), ("By", 18), ("When", 18)],
                [.. rows.OrderBy(r => r.Step).Select(r => r.Row)]
            ),
        };
    }

    private static SheetPart Laboratory(VesselHistory history) =>
        new("Laboratory tests")
        {
            Sentences =
                history.Laboratory.Count == 0
                    ? ["None is recorded of this vessel or its lot."]
                    : [],
            Table = new SheetTable(
                [
                    ("Sample", 14),
                    ("Of", 16),
                    ("Test and method", 22),
                    ("Acceptance", 22),
                    ("Result", 36),
                    ("By", 16),
                    ("Tested", 14),
                ],
                [
                    .. history.Laboratory.Select(t => new SheetRow(
                        [
                            t.Subject.Sample,
                            t.Subject.VesselSerial ?? $"lot {t.ProductionLot}",
                            $"{TestKinds.Of(t.Test).Word}, {t.Header.Method}, {t.Header.MethodEdition}",
                            $"{t.Header.Acceptance}, {t.Header.AcceptanceEdition}",
                            t.VerdictSentence,
                            t.TesterName,
                            CertificateTrust.Day(t.Header.TestedOn),
                        ],
                        PrintedMarks.Of(
                            DomainMarks.Of((Engineering.Conformity.Verdict?)t.Verdict),
                            TestRecord.VerdictWord(t.Verdict)
                        )
                    )),
                ]
            ),
        };

    private static SheetRow Test(TestRecord test, string method, CertificateSource source) =>
        new(
            [
                FormattableString.Invariant($"{test.StepSequence}"),
                method,
                test.VerdictSentence,
                test.InspectorName,
                source.Site.Show(test.SignedAt ?? test.TestedAt),
            ],
            test.Withdrawal is not null
                ? new StateMark("withdrawn", MarkShape.Ring)
                : PrintedMarks.Of(
                    DomainMarks.Of(test.Verdict),
                    test.SignedAt is null
                        ? $"{TestRecord.VerdictWord(test.Verdict)}, not signed"
                        : TestRecord.VerdictWord(test.Verdict)
                )
        );

    private static SheetPart Limits(CertificateSource source)
    {
        var (plan, units) = (source.History.Design.Content.Pressures, source.Site.Units);
        return new SheetPart("Limits and their sources")
        {
            Values =
            [
                new("Maximum expected operating pressure", Texts.Of(plan.Meop, units)),
                .. plan
                    .Stages.Where(s => s.FactorOnMeop > 0)
                    .Select(s => new LabelledValue(s.Name, Texts.Of(plan.Target(s), units))),
                new(
                    "Leak rate",
                    $"at most {Texts.Of(plan.LeakRateLimit, units)} at {Texts.Of(plan.LeakTestPressure, units)}"
                ),
                new("Permanent set", $"at most {Texts.Of(plan.AllowedPermanentSet, units)}"),
                new("Source of the test factors", plan.FactorSource),
                .. source
                    .History.Sections.Select(s =>
                        s.Standards?.Limits.Source ?? s.Measurement?.LimitSource
                    )
                    .OfType<string>()
                    .Distinct()
                    .Select(text => new LabelledValue("Source of the limits of sections", text)),
            ],
        };
    }
}

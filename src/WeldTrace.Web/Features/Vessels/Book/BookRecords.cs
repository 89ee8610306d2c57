using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Book;

/// <summary>Records that have no paper of their own, as parts of the book's lists.</summary>
internal static class BookRecords
{
    public static IEnumerable<SheetPart> Planned(IReadOnlyList<Record> records, Site site) =>
        [
            .. records
                .OfType<VesselDesign>()
                .Select(d => new SheetPart($"Design {d.Label}")
                {
                    Values =
                    [
                        new("Title", d.Title),
                        new("State", VesselDesign.StateWord(d.State)),
                        new("Parent material", $"{d.Content.Alloy}-{d.Content.Temper}"),
                    ],
                    Table = new SheetTable(
                        [("Step", 12), ("What", 60), ("Joint", 14), ("Pass", 14)],
                        [
                            .. d.Content.Route.Select(s => new SheetRow([
                                Number(s.Sequence),
                                s.Title,
                                s.JointCode,
                                s.PassNumber is { } pass ? Number(pass) : null,
                            ])),
                        ]
                    ),
                }),
            .. records
                .OfType<ProductionLot>()
                .Select(l => new SheetPart($"Production lot {l.Number}")
                {
                    Sentences = l.Acceptance?.Statement.Sentences ?? [],
                    Values =
                    [
                        new("State", ProductionLot.StateWord(l.State)),
                        new("Vessels", string.Join(", ", l.Vessels.Select(v => v.Label))),
                        new("Samples chosen by", l.SampledBy),
                        new(
                            "Accepted",
                            l.Acceptance is { } accepted
                                ? $"{accepted.PrintedName}, {site.Show(accepted.At)}"
                                : null
                        ),
                    ],
                    Table = new SheetTable(
                        [("Sample", 20), ("Kind", 20), ("What it showed", 60)],
                        [
                            .. l.Results.Select(r => new SheetRow([
                                r.Serial,
                                SamplePlan.KindWord(r.Kind),
                                r.Sentence,
                            ])),
                        ]
                    ),
                }),
        ];

    public static IEnumerable<SheetPart> Material(IReadOnlyList<Record> records) =>
        [
            .. records
                .OfType<MaterialLot>()
                .Select(l => new SheetPart($"Material lot {l.Number}")
                {
                    Values =
                    [
                        new("Material", $"{l.Alloy}-{l.Temper}, {l.Form}"),
                        new("Cast number", l.CastNumber),
                        new("Inspection document", Document(l)),
                    ],
                    Table = new SheetTable(
                        [("Property", 24), ("Value", 16), ("Least", 16), ("Verdict", 44)],
                        [
                            .. (l.Results?.Lines ?? []).Select(r => new SheetRow([
                                r.Name,
                                r.Value?.ToString(),
                                r.Least?.ToString(),
                                r.Sentence,
                            ])),
                        ]
                    ),
                }),
            .. records
                .OfType<CutComponent>()
                .Select(c => new SheetPart($"Component {c.Serial}")
                {
                    Values =
                    [
                        new("What", c.PartKind),
                        new("Cut from", $"{c.LotNumber}, cast {c.CastNumber}"),
                        new("Made", $"{Day(c.MadeOn)} by {c.MadeBy}"),
                        new("Built into", c.VesselSerial),
                    ],
                }),
            .. records
                .OfType<HeatTreatment>()
                .Select(t => new SheetPart($"Heat treatment {t.Number}")
                {
                    Values =
                    [
                        new("Furnace and day", $"{t.Furnace}, {Day(t.On)}"),
                        new(
                            "Asked",
                            $"{t.Asked.Instruction}: {t.Asked.Lower} to {t.Asked.Upper}, {t.Asked.ShortestMinutes} to {t.Asked.LongestMinutes}"
                        ),
                        new(
                            "Kept",
                            $"{t.Kept.Lowest} to {t.Kept.Highest}, {t.Kept.Minutes}, read by {t.Kept.InstrumentMark}"
                        ),
                        new("Verdict", t.Verdict),
                        new("Parts", string.Join(", ", t.Parts.Select(p => p.Serial))),
                        new("Entered by", t.EnteredByName),
                    ],
                }),
        ];

    public static IEnumerable<SheetPart> Equipment(IReadOnlyList<Record> records) =>
        [
            .. records
                .OfType<Machine>()
                .Select(m => new SheetPart($"Machine {m.Name}")
                {
                    Values = [new("What", m.Description), new("Control", m.ControlMode)],
                    Table = new SheetTable(
                        [("Day", 14), ("Event", 26), ("What was seen or done", 40), ("By", 20)],
                        [
                            .. (m.Events ?? []).Select(e => new SheetRow([
                                Day(e.On),
                                MachineWords.Of(e.Kind),
                                e.Text,
                                e.ByName,
                            ])),
                        ]
                    ),
                }),
            .. records.OfType<ProductionTest>().Select(Production),
            .. records.OfType<Instrument>().Select(Calibrations),
        ];

    public static IEnumerable<SheetPart> Archives(IReadOnlyList<Record> records, Site site) =>
        records
            .OfType<VesselArchive>()
            .OrderBy(a => a.At)
            .Select(a => new SheetPart(a.Label)
            {
                Sentences =
                [
                    "Process logs and files of this vessel have left the database; what stands in this book was read from the bundle.",
                ],
                Values =
                [
                    new("Bundle", a.Bundle.Hash),
                    new("Process logs", FormattableString.Invariant($"{a.Logs.Count}")),
                    new("Files", FormattableString.Invariant($"{a.Files.Count}")),
                    new(
                        "Kept whole up to",
                        FormattableString.Invariant($"{a.KeptUntil:yyyy-MM-dd}; {a.Rule}")
                    ),
                    new("By", $"{a.ArchivedBy}, {site.Show(a.At)}"),
                ],
            });

    public static IEnumerable<SheetPart> Certificates(IReadOnlyList<Record> records) =>
        records
            .OfType<Domain.Certification.Certificate>()
            .OrderBy(c => c.PersonName, StringComparer.Ordinal)
            .Select(c => new SheetPart($"{c.PersonName}: {c.Number}")
            {
                Values =
                [
                    new("Attests", CertificateWords.Of(c.Attests)),
                    new("Scope", Scope(c)),
                    new("Issued by", c.Text.IssuedBy),
                    new("Tested", Day(c.Text.TestedOn)),
                    new("Expires", Day(c.ExpiresOn)),
                ],
                Table = new SheetTable(
                    [("Day", 20), ("What", 50), ("By", 30)],
                    [
                        .. c.Confirmations.Select(f => new SheetRow([
                            Day(f.On),
                            c.Attests == CertificateKind.Examiner
                                ? "vision tested again"
                                : "continued work confirmed",
                            f.ByName,
                        ])),
                        .. c.Revocations.Select(r => new SheetRow([
                            Day(r.On),
                            $"revoked {(r.JointTypes.Count == 0 ? "wholly" : $"for {string.Join(", ", r.JointTypes)}")}: {r.Reason}",
                            r.ByName,
                        ])),
                    ]
                ),
            });

    private static SheetPart Production(ProductionTest test) =>
        new($"Production test {test.Label}")
        {
            Values =
            [
                new("Procedure and tool", $"{test.ProcedureLabel}, {test.ToolMark}"),
                new("Result", test.Result),
                new("Verdict", test.HasPassed ? "pass" : "fail"),
                new("Examined by", test.InspectorName),
            ],
        };

    private static SheetPart Calibrations(Instrument instrument) =>
        new($"Instrument {instrument.Mark}")
        {
            Values =
            [
                new("What", instrument.Text.Description),
                new("Range", $"{instrument.Text.Lower} to {instrument.Text.Upper}"),
                new("Resolution", instrument.Text.Resolution.ToString()),
                new("Largest permitted error", instrument.Text.LargestError.ToString()),
                new("Out of use", instrument.WithdrawnBecause),
            ],
            Table = new SheetTable(
                [
                    ("Day", 14),
                    ("Laboratory", 30),
                    ("Certificate", 22),
                    ("As-found error", 16),
                    ("Due", 18),
                ],
                [
                    .. instrument.Calibrations.Select(c => new SheetRow(
                        [
                            Day(c.On),
                            c.Laboratory,
                            c.CertificateNumber,
                            c.AsFoundError.ToString(),
                            Day(c.DueOn),
                        ],
                        PrintedMarks.Of(
                            c.IsWithinLimit ? Mark.Passed : Mark.Failed,
                            c.IsWithinLimit ? "within" : "out of tolerance"
                        )
                    )),
                ]
            ),
        };

    private static string Scope(Domain.Certification.Certificate certificate) =>
        certificate.Text switch
        {
            { Operator: { } scope } =>
                $"{string.Join(", ", scope.JointTypes)} joints, {scope.ControlMode} control, {CertificateWords.Of(scope.ToolType)}; test weld to {scope.ProcedureLabel}",
            { Examiner: { } scope } => FormattableString.Invariant(
                $"{CertificateWords.Of(scope.Method)}, level {scope.Level}, {scope.Sector}"
            ),
            _ => certificate.Text.Subject ?? "",
        };

    private static string Document(MaterialLot lot) =>
        lot.Document is { } document
            ? $"type {InspectionDocuments.Word(document.Type)}, {lot.CertificateNumber}, to {document.ProductStandard}"
            : $"{lot.CertificateNumber}, not filed";

    private static string Day(DateOnly day) => FormattableString.Invariant($"{day:yyyy-MM-dd}");

    private static string Number(int number) => FormattableString.Invariant($"{number}");
}

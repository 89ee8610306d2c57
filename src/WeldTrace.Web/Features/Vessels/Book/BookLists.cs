using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Tracing;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Book;

/// <summary>Chapters that are made for the book: what made the vessel, who signed, and every act in the ledger.</summary>
internal static class BookLists
{
    public static BookChapter OfGenealogy(Domain.Tracing.Genealogy genealogy)
    {
        var byKey = genealogy.Nodes.ToDictionary(n => n.Key);
        var onward = genealogy.Links.ToLookup(l => l.Left);
        return BookChapter.Of(
            "Everything that made it",
            [
                .. GenealogyGroups
                    .All.Select(g => (Group: g, Nodes: genealogy.In(g)))
                    .Where(g => g.Nodes.Count > 0)
                    .Select(g => new SheetPart(GenealogyGroups.Word(g.Group))
                    {
                        Table = new SheetTable(
                            [("What", 30), ("About it", 26), ("Leads to", 44)],
                            [.. g.Nodes.Select(n => new SheetRow([n.Label, n.Detail, Onward(n)]))]
                        ),
                    }),
                new SheetPart("Certificates and calibrations on the day")
                {
                    Table = new SheetTable(
                        [
                            ("Day", 12),
                            ("What was done", 26),
                            ("By or with", 18),
                            ("As it stood", 44),
                        ],
                        [.. genealogy.Proofs.OrderBy(p => p.Day).Select(Proof)]
                    ),
                },
            ]
        );

        string Onward(GenealogyNode node) =>
            string.Join(
                "; ",
                onward[node.Key]
                    .Select(l => (l.Words, Other: byKey[l.Right]))
                    .Where(p =>
                        node.Group != GenealogyGroup.Vessel
                        || p.Other.Group == GenealogyGroup.Vessel
                    )
                    .OrderBy(p => p.Other.Group)
                    .Select(p => $"{Relation(p.Words)}: {p.Other.Label}")
            );
    }

    public static BookChapter OfCompliance(IReadOnlyList<ComplianceLine> lines) =>
        BookChapter.Of(
            "What is asked of it, and what shows it",
            [
                new SheetPart("Compliance matrix")
                {
                    Sentences =
                    [
                        "The requirements are in our own words. A line says what the records show, and not that the vessel is safe.",
                    ],
                    Table = new SheetTable(
                        [
                            ("No.", 5),
                            ("Requirement", 26),
                            ("Source", 22),
                            ("Evidence", 24),
                            ("Comment", 23),
                        ],
                        [
                            .. lines.Select(l => new SheetRow(
                                [
                                    l.Requirement.Number,
                                    l.Requirement.Text,
                                    $"{l.Requirement.Source} ({ComplianceMatrix.KnownWord(l.Requirement.Known)})",
                                    string.Join("; ", l.Evidence.Select(e => e.Label)),
                                    l.Comment,
                                ],
                                PrintedMarks.Of(
                                    DomainMarks.Of(l.State),
                                    ComplianceMatrix.StateWord(l.State)
                                )
                            )),
                        ]
                    ),
                },
            ]
        );

    public static BookChapter OfSignatures(Domain.Tracing.Genealogy genealogy, DocumentStamp stamp)
    {
        var labels = genealogy
            .Nodes.Select(n => n.Record)
            .OfType<RecordName>()
            .DistinctBy(r => r.Id)
            .ToDictionary(r => r.Id, r => r.Label);
        return BookChapter.OfSignatures(
            "All signatures",
            [
                .. genealogy.Signatures.Select(s => new SignatureEntry(
                    s.PrintedName,
                    s.Meaning,
                    s.At,
                    FormattableString.Invariant(
                        $"{labels.GetValueOrDefault(s.SignedId, s.SignedKind)}, version {s.SignedVersion}"
                    ),
                    s.SignedSha256
                )),
            ],
            stamp
        );
    }

    /// <summary>Every change of every record, so that an earlier version is told of with the reason for the later one.</summary>
    public static BookChapter OfLedger(BookSource source, Site site)
    {
        var labels = source.Records.ToDictionary(r => r.Id, r => r.Label);
        var signed = source.Records.OfType<Signature>().ToDictionary(s => s.Id);
        return BookChapter.Of(
            "Every act in the ledger",
            [
                new SheetPart("Acts, oldest first")
                {
                    Table = new SheetTable(
                        [
                            ("No.", 9),
                            ("When", 17),
                            ("Who", 16),
                            ("What was done", 20),
                            ("Record and version", 24),
                            ("Why", 28),
                        ],
                        [
                            .. source.Entries.Select(e => new SheetRow([
                                FormattableString.Invariant($"{e.Number}"),
                                site.Show(e.At),
                                e.ActorName,
                                e.Act,
                                Subject(e),
                                e.Reason,
                            ])),
                        ]
                    ),
                },
            ]
        );

        // A signature is told of by what it stands under; its meaning is the reason beside it.
        string Subject(LedgerEntry entry) =>
            signed.GetValueOrDefault(entry.RecordId) is { } signature
                ? FormattableString.Invariant(
                    $"{labels.GetValueOrDefault(signature.SignedId, signature.SignedKind)}, {signature.SignedVersion}"
                )
                : FormattableString.Invariant(
                    $"{labels.GetValueOrDefault(entry.RecordId, entry.RecordKind)}, {entry.RecordVersion}"
                );
    }

    public static IEnumerable<BookChapter> OfRecords(IReadOnlyList<Record> records, Site site)
    {
        IReadOnlyList<(string Title, IReadOnlyList<SheetPart> Parts)> chapters =
        [
            ("Design and production lot", [.. BookRecords.Planned(records, site)]),
            ("Material", [.. BookRecords.Material(records)]),
            ("Machines and instruments", [.. BookRecords.Equipment(records)]),
            ("Reviews of signals across runs", [.. BookReviews.Of(records, site)]),
            ("Archives", [.. BookRecords.Archives(records, site)]),
            ("Certificates of people", [.. BookRecords.Certificates(records)]),
        ];
        return chapters.Where(c => c.Parts.Count > 0).Select(c => BookChapter.Of(c.Title, c.Parts));
    }

    // Signatures have a chapter of their own, with their meanings.
    private static string Relation(IReadOnlyList<string> words) =>
        string.Join(
            ", ",
            words
                .Select(w => w.StartsWith("signed: ", StringComparison.Ordinal) ? "signed" : w)
                .Distinct()
        );

    private static SheetRow Proof(GenealogyProof proof) =>
        new(
            [
                FormattableString.Invariant($"{proof.Day:yyyy-MM-dd}"),
                proof.Work.Label,
                proof.Subject.Label,
                proof.Proof is { } document
                    ? $"{document.Label}: {proof.Sentence}"
                    : proof.Sentence,
            ],
            PrintedMarks.Of(
                proof.Holds ? Mark.Passed : Mark.Warning,
                proof.Holds ? "held" : "look at it"
            )
        );
}

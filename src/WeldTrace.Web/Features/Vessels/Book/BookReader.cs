using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Features.Vessels.Traveler;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Book;

/// <summary>A vessel's history with all that it rests on, as it was read at one moment.</summary>
public sealed record BookSource(
    VesselHistory History,
    IReadOnlyList<Record> Records,
    IReadOnlyList<LedgerEntry> Entries
);

/// <summary>Prints the history book of a vessel.</summary>
public sealed class BookReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    TravelerReader travelers,
    IEnumerable<IBookChapters> papers,
    StampReader stamps
)
{
    /// <summary>Kinds of records with a paper of their own, in the order of the book.</summary>
    private static readonly IReadOnlyList<string> Order =
    [
        "leak-test",
        "pressure-test",
        "section",
        "sign-off",
        "laboratory-test",
        "finding",
        "procedure-revision",
        "qualification",
        "tool",
    ];

    /// <summary>The book as PDF; null when there is no such vessel.</summary>
    public async Task<byte[]?> PrintAsync(
        string serial,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    ) => await FindAsync(serial, site, actor, cancellation) is { } model ? Print(model) : null;

    /// <summary>The book of a history already read.</summary>
    public async Task<byte[]> PrintAsync(
        WeldTraceDbContext db,
        BookSource source,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    ) => Print(await ModelAsync(db, source, site, actor, cancellation));

    /// <summary>What the book prints; null when there is no such vessel.</summary>
    public async Task<HistoryBookModel?> FindAsync(
        string serial,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(
                async token =>
                {
                    await using var snapshot = await db.Database.BeginSnapshotAsync(token);
                    var history = await db.FindVesselHistoryAsync(serial, token);
                    if (history is null)
                    {
                        return null;
                    }

                    var records = await db.LoadRecordsBehindAsync(history, token);
                    var ledger = await db.ReadLedgerAsync([.. records.Select(r => r.Id)], token);
                    return await ModelAsync(
                        db,
                        new(history, records, [.. ledger.Entries.Select(e => e.Entry)]),
                        site,
                        actor,
                        token
                    );
                },
                cancellation
            );
    }

    private async Task<HistoryBookModel> ModelAsync(
        WeldTraceDbContext db,
        BookSource source,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var vessel = source.History.Vessel;
        var settings = await sites.GetAsync(cancellation);
        var stamp = await stamps.ReadAsync(actor, cancellation);
        var genealogy = Domain.Tracing.Genealogy.Of(vessel, source.Records, settings.DayOf);
        var traveler = await travelers.ModelAsync(db, source.History, site, actor, cancellation);
        return new HistoryBookModel
        {
            Stamp = stamp,
            Serial = vessel.Serial,
            RecordAddress = new Uri(site, Routes.Vessel(vessel.Serial)).AbsoluteUri,
            State = PrintedMarks.Of(DomainMarks.Of(vessel.State), Vessel.StateWord(vessel.State)),
            Particulars = Particulars(source),
            Notices = Notices(genealogy),
            Chapters =
            [
                BookChapter.Of(traveler),
                BookLists.OfGenealogy(genealogy),
                BookLists.OfCompliance(
                    ComplianceMatrix.Of(vessel, source.History.Design.Content, source.Records)
                ),
                .. await PapersAsync(source.Records, site, actor, cancellation),
                .. BookLists.OfRecords(source.Records, settings),
                BookLists.OfSignatures(genealogy, stamp),
                BookLists.OfLedger(source, settings),
                .. await BookFiles.ReadAsync(db, source.Records, cancellation),
            ],
        };
    }

    private static byte[] Print(HistoryBookModel model)
    {
        using var pdf = new MemoryStream();
        HistoryBookExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    private static IReadOnlyList<LabelledValue> Particulars(BookSource source) =>
        [
            new("Design", source.History.Vessel.DesignLabel),
            new("Production lot", source.History.Vessel.ProductionLot),
            new("Records", Count(source.Records.Count(r => r is not Signature))),
            new("Signatures", Count(source.Records.Count(r => r is Signature))),
            new("Acts in the ledger", Count(source.Entries.Count)),
        ];

    private static string Count(int number) =>
        number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static IReadOnlyList<string> Notices(Domain.Tracing.Genealogy genealogy) =>
        [
            .. genealogy
                .Proofs.Where(p => !p.Holds)
                .Select(p =>
                    FormattableString.Invariant(
                        $"{p.Work.Label}, {p.Day:yyyy-MM-dd}, {p.Subject.Label}: {p.Sentence}"
                    )
                )
                .Distinct(),
        ];

    private async Task<IReadOnlyList<BookChapter>> PapersAsync(
        IReadOnlyList<Record> records,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        List<BookChapter> chapters = [];
        foreach (var kind in Order)
        {
            foreach (var record in records.Where(r => r.Kind == kind).OrderBy(r => r.Id))
            {
                var paper = papers.Single(p => p.Kinds.Contains(kind));
                var chapter = await paper.FindChapterAsync(record.Id, site, actor, cancellation);
                if (chapter is not null)
                {
                    chapters.Add(chapter);
                }
            }
        }

        return chapters;
    }
}

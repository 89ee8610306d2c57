using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.Vessels.Book;

/// <summary>The files that records name: a list with their hashes, and the pictures among them that stand nowhere else.</summary>
internal static class BookFiles
{
    private const long LargestPictureBytes = 20_000_000;

    public static async Task<IReadOnlyList<BookChapter>> ReadAsync(
        WeldTraceDbContext db,
        IReadOnlyList<Record> records,
        CancellationToken cancellation
    )
    {
        var named = records
            .SelectMany(r =>
                NamedHashes.In(RecordSnapshot.Of(r)).Attachments.Select(h => (Hash: h, r.Label))
            )
            .ToLookup(p => p.Hash, p => p.Label);
        var hashes = named.Select(g => g.Key).ToList();
        var files = await db
            .Attachments.AsNoTracking()
            .Where(a => hashes.Contains(a.Sha256))
            .Select(a => new KeptFile(a.Sha256, a.MediaType, a.Length))
            .ToListAsync(cancellation);
        if (files.Count == 0)
        {
            return [];
        }

        // Photographs of sections are printed with their measurements in their own chapters.
        var sections = records.OfType<SectionExamination>().Select(s => s.Photograph.Sha256);
        var pictures = files.Where(f => f.IsPrinted).Select(f => f.Sha256).Except(sections);
        return
        [
            BookChapter.Of(
                "Files kept with the records",
                [Part(files, named)],
                await PicturesAsync(db, [.. pictures], named, cancellation)
            ),
        ];
    }

    private static SheetPart Part(IReadOnlyList<KeptFile> files, ILookup<string, string> named) =>
        new("Files")
        {
            Sentences = ["The files themselves are in the history bundle, named by their SHA-256."],
            Table = new SheetTable(
                [("Named by", 30), ("Kind", 16), ("Bytes", 10), ("SHA-256", 44)],
                [
                    .. files
                        .OrderBy(f => f.Sha256, StringComparer.Ordinal)
                        .Select(f => new SheetRow([
                            Names(named, f.Sha256),
                            f.MediaType,
                            FormattableString.Invariant($"{f.Length}"),
                            f.Sha256,
                        ])),
                ]
            ),
        };

    private static async Task<IReadOnlyList<Documents.Photograph>> PicturesAsync(
        WeldTraceDbContext db,
        IReadOnlyList<string> hashes,
        ILookup<string, string> named,
        CancellationToken cancellation
    )
    {
        List<Documents.Photograph> pictures = [];
        foreach (var hash in hashes.Order(StringComparer.Ordinal))
        {
            var file = await db.FindAttachmentAsync(hash, cancellation);
            pictures.Add(
                new(
                    file!.Bytes,
                    $"{Names(named, hash)}; SHA-256 {hash}",
                    $"Picture kept with {Names(named, hash)}."
                )
            );
        }

        return pictures;
    }

    private static string Names(ILookup<string, string> named, string sha256) =>
        string.Join(", ", named[sha256].Distinct());

    private sealed record KeptFile(string Sha256, string MediaType, long Length)
    {
        public bool IsPrinted =>
            MediaType is "image/jpeg" or "image/png" && Length <= LargestPictureBytes;
    }
}

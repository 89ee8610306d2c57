using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Qualifications;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Documents.TestReports;
using WeldTrace.Documents.Tools;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Book;

/// <summary>A chapter of a history book: a paper as it is printed by itself too, or a list made for the book.</summary>
public sealed class BookChapter
{
    private readonly Func<IReadOnlyList<Block>> _blocks;

    private BookChapter(string title, Func<IReadOnlyList<Block>> blocks) =>
        (Title, _blocks) = (title, blocks);

    /// <summary>Title in the contents.</summary>
    public string Title { get; }

    public static BookChapter Of(TravelerModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new($"Vessel traveler {model.Vessel.Serial}", () => TravelerDocument.Blocks(model));
    }

    public static BookChapter Of(ProcedureSheetModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new(ProcedureDocument.Title(model.Identity), () => ProcedureDocument.Blocks(model));
    }

    public static BookChapter Of(QualificationModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new(QualificationDocument.Title(model), () => QualificationDocument.Blocks(model));
    }

    public static BookChapter Of(ToolCardModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new($"Tool card {model.Serial}", () => ToolCardDocument.Blocks(model));
    }

    public static BookChapter Of(TestReportModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new(TestReportDocument.Title(model), () => TestReportDocument.Blocks(model));
    }

    public static BookChapter Of(RecordSheetModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new(model.Title, () => RecordSheetDocument.Blocks(model));
    }

    /// <summary>Lists of records that have no paper of their own.</summary>
    /// <param name="title">Title of the chapter.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="photographs">Pictures after them.</param>
    public static BookChapter Of(
        string title,
        IReadOnlyList<SheetPart> parts,
        params IReadOnlyList<Photograph> photographs
    )
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(photographs);
        return new(
            title,
            () =>
                [
                    new Heading(title, 1),
                    .. RecordSheetDocument.Parts(parts),
                    .. Part.Of("Pictures", photographs.Select(p => new Picture(p, Highest))),
                ]
        );
    }

    /// <summary>Every signature under the records.</summary>
    public static BookChapter OfSignatures(
        string title,
        IReadOnlyList<SignatureEntry> signatures,
        DocumentStamp stamp
    ) => new(title, () => [new Heading(title, 1), .. SignaturePart.Blocks(signatures, [], stamp)]);

    private const double Highest = 380;

    internal IReadOnlyList<Block> Blocks() => _blocks();
}

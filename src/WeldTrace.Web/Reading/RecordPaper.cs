using WeldTrace.Documents.Book;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Reading;

/// <summary>The paper of one kind of record, printed by itself and as a chapter of a history book.</summary>
/// <param name="chapter">Makes a chapter of what is printed.</param>
/// <param name="write">Writes it as a PDF of its own.</param>
/// <typeparam name="TModel">What the paper prints.</typeparam>
public abstract class RecordPaper<TModel>(
    Func<TModel, BookChapter> chapter,
    Action<TModel, Stream> write
) : IBookChapters
    where TModel : class
{
    public abstract IReadOnlyList<string> Kinds { get; }

    public async Task<BookChapter?> FindChapterAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    ) => await ModelAsync(id, address, actor, cancellation) is { } model ? chapter(model) : null;

    /// <summary>The PDF; null when there is no such record.</summary>
    /// <param name="id">Record.</param>
    /// <param name="address">Address of the site, for its QR code.</param>
    /// <param name="actor">Who prints.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public async Task<byte[]?> PrintAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (await ModelAsync(id, address, actor, cancellation) is not { } model)
        {
            return null;
        }

        using var pdf = new MemoryStream();
        write(model, pdf);
        return pdf.ToArray();
    }

    /// <summary>What is printed; null when there is no such record, or it has no paper.</summary>
    protected abstract Task<TModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    );
}

using WeldTrace.Documents.Book;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Reading;

/// <summary>Makes the paper of one kind of record a chapter of a history book, as it is printed by itself.</summary>
public interface IBookChapters
{
    /// <summary>Kinds of records that have such a paper.</summary>
    IReadOnlyList<string> Kinds { get; }

    /// <summary>The chapter of a record; null when there is no such record.</summary>
    /// <param name="id">Record.</param>
    /// <param name="address">Address of the site, for its QR code.</param>
    /// <param name="actor">Who prints.</param>
    /// <param name="cancellation">Ends the reading.</param>
    Task<BookChapter?> FindChapterAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    );
}

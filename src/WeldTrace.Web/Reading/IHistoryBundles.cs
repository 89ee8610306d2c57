using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Reading;

/// <summary>Writes the history bundle of a vessel, as it is downloaded by itself.</summary>
public interface IHistoryBundles
{
    /// <summary>Writes the bundle; false when there is no such vessel.</summary>
    /// <param name="serial">Serial number.</param>
    /// <param name="site">Address of the site, for the traveler.</param>
    /// <param name="actor">Who asks.</param>
    /// <param name="output">An empty file.</param>
    /// <param name="cancellation">Leaves the file unfinished.</param>
    Task<bool> WriteAsync(
        string serial,
        Uri site,
        Actor actor,
        FileStream output,
        CancellationToken cancellation
    );
}

using BenchmarkDotNet.Attributes;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Documents.Book;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Features.Vessels.Book;

namespace WeldTrace.Benchmarks.Pages;

/// <summary>The history book of a vessel of the demonstration, its chapters repeated to 200 pages and more. Limit: less than 2 s.</summary>
public class BookBenchmark
{
    private const int LeastPages = 200;
    private DemoSite _site = null!;
    private HistoryBookModel _model = null!;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _site = DemoSite.Start();
        await using var scope = _site.Services.CreateAsyncScope();
        var found = await scope
            .ServiceProvider.GetRequiredService<BookReader>()
            .FindAsync(
                "NR10-0001",
                new Uri("https://records.example/"),
                new Actor(Guid.Empty, "Benchmark", [Role.Auditor]),
                CancellationToken.None
            );
        _model = found! with
        {
            Chapters = [.. Enumerable.Repeat(found!.Chapters, 3).SelectMany(c => c)],
        };
        var pages = HistoryBookExporter.Write(_model, Stream.Null);
        if (pages < LeastPages)
        {
            throw new InvalidOperationException($"The book has {pages} pages only.");
        }
    }

    [GlobalCleanup]
    public async Task CleanupAsync() => await _site.DisposeAsync();

    [Benchmark]
    public int Write() => HistoryBookExporter.Write(_model, new MemoryStream());
}

using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Laboratory.List;

/// <summary>The laboratory tests of the site, a page at a time; the newest first.</summary>
public sealed class LaboratoryListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string LotFilter = "lot";
    public const string TestFilter = "test";
    public const string VerdictFilter = "verdict";

    public static IReadOnlyList<string> SortKeys { get; } = ["test", "lot", "verdict", "tester"];

    public async Task<(IReadOnlyList<LaboratoryTest> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.LaboratoryTests.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<LaboratoryTest> Filter(
        IQueryable<LaboratoryTest> tests,
        TableQuery query
    )
    {
        if (query.Filter(LotFilter).Trim() is { Length: > 0 } lot)
        {
            tests = tests.Where(t =>
                EF.Functions.ILike(t.ProductionLot, LikeText.Containing(lot), LikeText.EscapeMark)
            );
        }

        if (Enum.TryParse<TestKind>(query.Filter(TestFilter), out var kind) && Enum.IsDefined(kind))
        {
            tests = tests.Where(t => t.Test == kind);
        }

        return
            Enum.TryParse<Verdict>(query.Filter(VerdictFilter), out var verdict)
            && Enum.IsDefined(verdict)
            ? tests.Where(t => t.Verdict == verdict)
            : tests;
    }

    // The identity grows with time.
    private static IOrderedQueryable<LaboratoryTest> Sort(
        IQueryable<LaboratoryTest> tests,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("test", false) => tests.OrderBy(t => t.Test).ThenByDescending(t => t.Id),
            ("test", true) => tests.OrderByDescending(t => t.Test).ThenBy(t => t.Id),
            ("lot", false) => tests.OrderBy(t => t.ProductionLot).ThenByDescending(t => t.Id),
            ("lot", true) => tests.OrderByDescending(t => t.ProductionLot).ThenBy(t => t.Id),
            ("verdict", false) => tests.OrderBy(t => t.Verdict).ThenByDescending(t => t.Id),
            ("verdict", true) => tests.OrderByDescending(t => t.Verdict).ThenBy(t => t.Id),
            ("tester", false) => tests.OrderBy(t => t.TesterName).ThenByDescending(t => t.Id),
            ("tester", true) => tests.OrderByDescending(t => t.TesterName).ThenBy(t => t.Id),
            _ => tests.OrderByDescending(t => t.Id),
        };
}

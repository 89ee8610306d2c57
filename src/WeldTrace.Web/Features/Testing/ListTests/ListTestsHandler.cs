using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.ListTests;

public sealed class ListTestsHandler(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string SerialFilter = "serial";
    public const string KindFilter = "kind";
    public const string VerdictFilter = "verdict";
    public const string NotFinished = "open";

    public static IReadOnlyList<string> SortKeys { get; } =
    ["tested", "serial", "kind", "verdict", "inspector"];

    /// <summary>One page of the list and the count of all rows.</summary>
    public async Task<(IReadOnlyList<TestRow> Rows, int Total)> ReadAsync(
        TableQuery query,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = Filtered(db, query);
        return (
            await Sorted(rows, query)
                .Skip(query.Skip)
                .Take(query.PageSize)
                .ToListAsync(cancellation),
            await rows.CountAsync(cancellation)
        );
    }

    /// <summary>The whole list.</summary>
    public async Task<IReadOnlyList<TestRow>> ReadAllAsync(
        TableQuery query,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await Sorted(Filtered(db, query), query).ToListAsync(cancellation);
    }

    private static IQueryable<TestRow> Filtered(WeldTraceDbContext db, TableQuery query)
    {
        var (serial, kind, verdict) = (
            query.Filter(SerialFilter).Trim(),
            query.Filter(KindFilter),
            query.Filter(VerdictFilter)
        );
        var rows = Rows(db.LeakTests, TestKinds.Leak)
            .Concat(Rows(db.PressureTests, TestKinds.Pressure))
            .Concat(Rows(db.Sections, TestKinds.Section));
        if (serial.Length > 0)
        {
            var pattern = "%" + LikeText.Escape(serial) + "%";
            rows = rows.Where(r => EF.Functions.ILike(r.Serial, pattern, LikeText.EscapeMark));
        }

        if (kind.Length > 0)
        {
            rows = rows.Where(r => r.Kind == kind);
        }

        if (verdict == NotFinished)
        {
            rows = rows.Where(r => r.Verdict == null);
        }
        else if (
            Enum.TryParse<Verdict>(verdict, ignoreCase: true, out var wanted)
            && Enum.IsDefined(wanted)
        )
        {
            rows = rows.Where(r => r.Verdict == wanted);
        }

        return rows;
    }

    private static IQueryable<TestRow> Rows<T>(DbSet<T> tests, string kind)
        where T : TestRecord =>
        tests
            .AsNoTracking()
            .Select(t => new TestRow
            {
                Id = t.Id,
                Kind = kind,
                Serial = t.VesselSerial,
                Step = t.StepSequence,
                TestedAt = t.TestedAt,
                Inspector = t.InspectorName,
                Verdict = t.Verdict,
                SignedAt = t.SignedAt,
                IsWithdrawn = t.Withdrawal != null,
            });

    private static IQueryable<TestRow> Sorted(IQueryable<TestRow> rows, TableQuery query) =>
        query.Sort switch
        {
            "tested" => By(rows, r => r.TestedAt, query.Descending),
            "serial" => By(rows, r => r.Serial, query.Descending),
            "kind" => By(rows, r => r.Kind, query.Descending),
            "verdict" => By(rows, r => r.Verdict, query.Descending),
            "inspector" => By(rows, r => r.Inspector, query.Descending),
            _ => rows.OrderByDescending(r => r.TestedAt).ThenBy(r => r.Id),
        };

    private static IQueryable<TestRow> By<TKey>(
        IQueryable<TestRow> rows,
        Expression<Func<TestRow, TKey>> key,
        bool descending
    ) =>
        (descending ? rows.OrderByDescending(key) : rows.OrderBy(key))
            .ThenByDescending(r => r.TestedAt)
            .ThenBy(r => r.Id);
}

using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Equipment.Machines;

/// <summary>The machines of the site, a page at a time.</summary>
public sealed class MachineListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string ByName = "name";
    public const string ByControl = "control";
    public const string NameFilter = "name-has";

    public static IReadOnlyList<string> SortKeys { get; } = [ByName, ByControl];

    public async Task<(IReadOnlyList<Machine> Page, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var part = query.Filter(NameFilter);
        var fitting = db
            .Machines.AsNoTracking()
            .Where(m =>
                part == ""
                || EF.Functions.ILike(m.Name, LikeText.Containing(part), LikeText.EscapeMark)
            );
        var sorted = (query.Sort, query.Descending) switch
        {
            (ByControl, false) => fitting.OrderBy(m => m.ControlMode).ThenBy(m => m.Name),
            (ByControl, true) => fitting.OrderByDescending(m => m.ControlMode).ThenBy(m => m.Name),
            (_, true) => fitting.OrderByDescending(m => m.Name),
            _ => fitting.OrderBy(m => m.Name),
        };
        var total = await fitting.CountAsync(cancellation);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            total
        );
    }
}

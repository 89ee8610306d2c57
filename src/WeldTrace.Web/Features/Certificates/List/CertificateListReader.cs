using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Certificates.List;

public sealed class CertificateListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string PersonFilter = "person";
    public const string KindFilter = "kind";

    public static readonly IReadOnlyList<string> SortKeys = ["number", "person", "expires"];

    public async Task<(IReadOnlyList<Certificate> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.Certificates.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<Certificate> Filter(
        IQueryable<Certificate> certificates,
        TableQuery query
    )
    {
        var person = query.Filter(PersonFilter).Trim();
        if (person.Length > 0)
        {
            certificates = certificates.Where(c =>
                EF.Functions.ILike(c.PersonName, LikeText.Containing(person), LikeText.EscapeMark)
            );
        }

        return Enum.TryParse<CertificateKind>(query.Filter(KindFilter), out var kind)
            ? certificates.Where(c => c.Attests == kind)
            : certificates;
    }

    private static IQueryable<Certificate> Sort(
        IQueryable<Certificate> certificates,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("number", false) => certificates.OrderBy(c => c.Number),
            ("number", true) => certificates.OrderByDescending(c => c.Number),
            ("person", false) => certificates.OrderBy(c => c.PersonName).ThenBy(c => c.Number),
            ("person", true) => certificates
                .OrderByDescending(c => c.PersonName)
                .ThenBy(c => c.Number),
            (_, true) => certificates.OrderByDescending(c => c.ExpiresOn).ThenBy(c => c.Number),
            _ => certificates.OrderBy(c => c.ExpiresOn).ThenBy(c => c.Number),
        };
}

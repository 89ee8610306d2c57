using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Trace;

/// <summary>Turns what stands in the address into a question, and names what is not on record.</summary>
internal sealed class TraceAsking(WeldTraceDbContext db, TableQuery query, Site site)
{
    private readonly List<FieldFault> _faults = [];
    private readonly List<string> _words = [];

    public IReadOnlyList<FieldFault> Faults => _faults;

    /// <summary>What was asked, in words, for the heading of a list.</summary>
    public IReadOnlyList<string> Words => _words;

    public async Task<TraceQuestion> ReadAsync(CancellationToken cancellation)
    {
        var question = new TraceQuestion
        {
            ToolId = await IdAsync(
                TraceFields.Tool,
                mark => IdOfAsync(db.ToolsOf(mark), cancellation)
            ),
            MachineId = await IdAsync(
                TraceFields.Machine,
                name => IdOfAsync(db.MachinesOf(name), cancellation)
            ),
            InstrumentId = await IdAsync(
                TraceFields.Instrument,
                mark => IdOfAsync(db.InstrumentsOf(mark), cancellation)
            ),
            MaterialLotId = await IdAsync(
                TraceFields.Lot,
                number => IdOfAsync(db.LotsOf(number), cancellation)
            ),
            ComponentId = await IdAsync(
                TraceFields.Component,
                serial => IdOfAsync(db.ComponentsOf(serial), cancellation)
            ),
            FindingId = await IdAsync(
                TraceFields.Finding,
                label => FindingAsync(label, cancellation)
            ),
            OperatorId = await IdAsync(
                TraceFields.Operator,
                name => OperatorAsync(name, cancellation)
            ),
            ProcedureRevisionIds = await ProceduresAsync(cancellation),
            From = Day(TraceFields.From, "from") is { } first ? Begins(first) : null,
            Until = Day(TraceFields.Until, "until") is { } last ? Begins(last.AddDays(1)) : null,
        };
        return await WithCertificateAsync(question, cancellation);
    }

    private async Task<Guid?> IdAsync(string field, Func<string, Task<Guid?>> find)
    {
        var text = query.Filter(field).Trim();
        if (text.Length == 0)
        {
            return null;
        }

        _words.Add($"{field} {text}");
        var id = await find(text);
        if (id is null)
        {
            Fault(
                field,
                $"There is no {field} {text} on record. Check the spelling, or scan its label."
            );
        }

        return id;
    }

    // A mark stands for an identity: what else the record holds is not read for it.
    private static Task<Guid?> IdOfAsync(
        IQueryable<Record> named,
        CancellationToken cancellation
    ) => named.Select(r => (Guid?)r.Id).SingleOrDefaultAsync(cancellation);

    private async Task<Guid?> FindingAsync(string label, CancellationToken cancellation) =>
        int.TryParse(
            label.StartsWith("F-", StringComparison.OrdinalIgnoreCase) ? label[2..] : label,
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? await db
                .Findings.Where(f => f.Number == number)
                .Select(f => (Guid?)f.Id)
                .SingleOrDefaultAsync(cancellation)
            : null;

    // Printed names are not unique, so two of them are no answer.
    private async Task<Guid?> OperatorAsync(string name, CancellationToken cancellation)
    {
        var people = await db
            .People.Where(p => p.SignInName == name || p.PrintedName == name)
            .Select(p => p.Id)
            .Take(2)
            .ToListAsync(cancellation);
        return people is [var only] ? only : null;
    }

    private async Task<IReadOnlyList<Guid>?> ProceduresAsync(CancellationToken cancellation)
    {
        var text = query.Filter(TraceFields.Procedure).Trim();
        if (text.Length == 0)
        {
            return null;
        }

        _words.Add($"procedure {text}");
        var parts = text.Split(" rev ", 2, StringSplitOptions.TrimEntries);
        var number = parts[0];
        var revisions = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => p.Number == number)
            .ToListAsync(cancellation);
        var ids = revisions
            .Where(p =>
                parts.Length == 1
                || string.Equals(p.Revision, parts[1], StringComparison.OrdinalIgnoreCase)
            )
            .Select(p => p.Id)
            .ToList();
        if (ids.Count == 0)
        {
            Fault(
                TraceFields.Procedure,
                $"There is no procedure {text}. Enter its number, with or without \"rev\" and the letter."
            );
        }

        return ids;
    }

    // A certificate stands for its holder's welds while it could be relied on.
    private async Task<TraceQuestion> WithCertificateAsync(
        TraceQuestion question,
        CancellationToken cancellation
    )
    {
        var number = query.Filter(TraceFields.Certificate).Trim();
        if (number.Length == 0)
        {
            return question;
        }

        _words.Add($"certificate {number}");
        var certificate = await db
            .Certificates.AsNoTracking()
            .SingleOrDefaultAsync(c => c.Number == number, cancellation);
        if (certificate is null)
        {
            Fault(TraceFields.Certificate, $"There is no certificate {number} on record.");
            return question;
        }

        if (question.OperatorId is { } asked && asked != certificate.PersonId)
        {
            Fault(
                TraceFields.Certificate,
                $"{number} is the certificate of {certificate.PersonName}; empty one of the two fields."
            );
        }

        var (begins, ends) = (Begins(certificate.Text.TestedOn), Begins(certificate.ExpiresOn));
        return question with
        {
            OperatorId = certificate.PersonId,
            From = question.From > begins ? question.From : begins,
            Until = question.Until < ends ? question.Until : ends,
        };
    }

    private DateOnly? Day(string field, string word)
    {
        var text = query.Filter(field);
        if (text.Length == 0)
        {
            return null;
        }

        _words.Add($"{word} {text}");
        if (
            DateOnly.TryParseExact(
                text,
                "yyyy-MM-dd",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var day
            ) && day.Year is > 1900 and < 9000
        )
        {
            return day;
        }

        Fault(field, $"{text} is no day; write it as 2031-05-20.");
        return null;
    }

    private DateTimeOffset Begins(DateOnly day) => site.BeginOf(day);

    private void Fault(string field, string sentence) => _faults.Add(new(field, sentence));
}

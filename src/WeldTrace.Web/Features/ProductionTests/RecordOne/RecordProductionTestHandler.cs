using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.ProductionTests.RecordOne;

public sealed class RecordProductionTestForm
{
    public string? Mark { get; set; }

    public Guid? MachineId { get; set; }

    public Guid? ProcedureRevisionId { get; set; }

    public Guid? ToolId { get; set; }

    public string? Result { get; set; }

    public string? Verdict { get; set; }

    public string? Password { get; set; }
}

/// <summary>What the form offers.</summary>
public sealed record ProductionTestChoices(
    IReadOnlyList<Machine> Machines,
    IReadOnlyList<ProcedureRevision> Procedures,
    IReadOnlyList<Tool> Tools
);

/// <summary>Records a production test with its signature.</summary>
public sealed class RecordProductionTestHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public const string Passed = "passed";
    public const string Failed = "failed";

    public async Task<ProductionTestChoices> ChoicesAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        return new ProductionTestChoices(
            await db.Machines.OrderBy(m => m.Name).ToListAsync(cancellation),
            await db
                .ProcedureRevisions.Where(p => p.State == ProcedureState.Released)
                .OrderBy(p => p.Number)
                .ToListAsync(cancellation),
            await db
                .Tools.Where(t => t.State == ToolState.InService)
                .OrderBy(t => t.Mark)
                .ToListAsync(cancellation)
        );
    }

    public async Task<Outcome> HandleAsync(
        RecordProductionTestForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var machine = await db.Machines.SingleOrDefaultAsync(
            m => m.Id == form.MachineId,
            cancellation
        );
        var procedure = await db.ProcedureRevisions.SingleOrDefaultAsync(
            p => p.Id == form.ProcedureRevisionId,
            cancellation
        );
        var tool = await db.Tools.SingleOrDefaultAsync(t => t.Id == form.ToolId, cancellation);
        var missing = Missing(form, machine, procedure, tool);
        if (missing.Count > 0)
        {
            return Outcome.From(missing);
        }

        var at = clock.GetUtcNow();
        var test = ProductionTest.Record(
            form.Mark ?? "",
            machine!,
            procedure!,
            tool!,
            form.Result ?? "",
            form.Verdict == Passed,
            await db.ExaminerAsync(actor, at, cancellation),
            actor,
            at
        );
        if (!test.IsAccepted)
        {
            return test.WithoutValue();
        }

        db.AddRange(test.Value, Signature.Of(test.Value, actor, ProductionTest.Meaning, at));
        return await db.SaveAsync(cancellation);
    }

    private static List<Refusal> Missing(
        RecordProductionTestForm form,
        Machine? machine,
        ProcedureRevision? procedure,
        Tool? tool
    )
    {
        List<Refusal> missing = [];
        Ask(machine, "Choose the machine.", nameof(form.MachineId));
        Ask(procedure, "Choose the procedure.", nameof(form.ProcedureRevisionId));
        Ask(tool, "Choose the tool.", nameof(form.ToolId));
        Ask(
            form.Verdict is Passed or Failed ? form.Verdict : null,
            "Say whether it met the limits.",
            nameof(form.Verdict)
        );
        return missing;

        void Ask(object? found, string sentence, string field)
        {
            if (found is null)
            {
                missing.Add(new("missing", sentence, field));
            }
        }
    }
}

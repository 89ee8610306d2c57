using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Laboratory.Enter;

/// <summary>Enters a laboratory test, signed by whoever made it.</summary>
public sealed class EnterLaboratoryHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    /// <summary>A form for a vessel: its lot, joint and procedure, and the limits by which the procedure was qualified.</summary>
    public async Task<EnterLaboratoryForm> BeginAsync(
        string? serial,
        TestKind kind,
        CancellationToken cancellation
    )
    {
        var form = new EnterLaboratoryForm
        {
            Id = FormIdentity.OrNew(Guid.Empty, clock),
            Method = TestKinds.Of(kind).Standard,
        };
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var vessel = await db
            .Vessels.AsNoTracking()
            .SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel is null)
        {
            return form;
        }

        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleAsync(d => d.Id == vessel.DesignId, cancellation);
        var joint = design.Content.Joints[0];
        var procedure = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => p.Number == joint.ProcedureNumber && p.State == ProcedureState.Released)
            .FirstOrDefaultAsync(cancellation);
        (form.VesselSerial, form.ProductionLot, form.JointCode, form.Procedure) = (
            vessel.Serial,
            vessel.ProductionLot,
            joint.Code,
            procedure?.Label
        );
        if (procedure?.Qualified?.Id is { } id)
        {
            var record = await db
                .Qualifications.AsNoTracking()
                .SingleAsync(q => q.Id == id, cancellation);
            Limits(form, kind, record);
        }

        return form;
    }

    public async Task<Outcome> HandleAsync(
        TestKind kind,
        EnterLaboratoryForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(actor);
        var entries = new Entries();
        var (sample, header) = (form.ReadSample(entries), form.ReadHeader(entries));
        List<Refusal> refusals = [];
        var entry = form.Read(kind, entries, refusals);
        var file = await PaperReader.ReadOptionalAsync(
            form.File,
            nameof(form.File),
            refusals,
            cancellation
        );
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.LaboratoryTests.AnyAsync(t => t.Id == form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var vessel = await db.Vessels.SingleOrDefaultAsync(
            v => v.Serial == sample.VesselSerial,
            cancellation
        );
        refusals.AddRange(NoVessel(sample, vessel));
        refusals.AddRange(await NoLotAsync(db, sample, cancellation));
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var at = clock.GetUtcNow();
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var entered = LaboratoryTest.Enter(
            form.Id,
            await FactsAsync(db, vessel, form, actor, at, cancellation),
            sample,
            kind,
            header,
            entry,
            file?.Sha256,
            actor,
            at
        );
        if (!entered.IsAccepted)
        {
            return entered.WithoutValue();
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        return proved.IsAccepted
            ? await SaveAsync(db, entered.Value, vessel, file, actor, cancellation)
            : proved;
    }

    private static IEnumerable<Refusal> NoVessel(LaboratorySample sample, Vessel? vessel)
    {
        if (sample.VesselSerial is { } serial && vessel is null)
        {
            yield return new(
                "vessel",
                $"There is no vessel {serial}; check the serial number, or leave it empty and give the lot.",
                nameof(EnterLaboratoryForm.VesselSerial)
            );
        }
    }

    // A sample that stands for a lot nobody knows would hold nothing when it fails.
    private static async Task<IReadOnlyList<Refusal>> NoLotAsync(
        WeldTraceDbContext db,
        LaboratorySample sample,
        CancellationToken cancellation
    )
    {
        var lot = sample.ProductionLot.Trim();
        return
            sample.VesselSerial is not null
            || lot.Length == 0
            || await db.Vessels.AnyAsync(v => v.ProductionLot == lot, cancellation)
            ? []
            :
            [
                new(
                    "lot",
                    $"No vessel belongs to production lot {lot}; check its number in the list of lots.",
                    nameof(EnterLaboratoryForm.ProductionLot)
                ),
            ];
    }

    private static void Limits(EnterLaboratoryForm form, TestKind kind, QualificationRecord record)
    {
        var invariant = System.Globalization.CultureInfo.InvariantCulture;
        var plan = record.Plan;
        if (kind == TestKind.TransverseTensile && plan.Tensile is { } tensile)
        {
            (form.Required, form.RequiredSource) = (
                tensile.Megapascals.ToString(invariant),
                $"{record.Number}: {tensile.Derivation}"
            );
        }
        else if (kind != TestKind.Hardness && plan is { Former: { } former, BendCrack: { } crack })
        {
            (form.Required, form.RequiredSource, form.Crack) = (
                former.Millimetres.ToString(invariant),
                $"{record.Number}: {former.Derivation}",
                crack.ToString(invariant)
            );
        }
    }

    private static async Task<LaboratoryFacts> FactsAsync(
        WeldTraceDbContext db,
        Vessel? vessel,
        EnterLaboratoryForm form,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        var typed = await db.TypedInstrumentsAsync(
            cancellation,
            (LaboratoryTest.InstrumentField, form.Instrument)
        );
        return new LaboratoryFacts(
            vessel,
            vessel is null ? [] : await db.WhoWeldedAsync(vessel.Id, cancellation),
            await db.ExaminerAsync(actor, at, cancellation),
            typed[0]
        );
    }

    private static async Task<Outcome> SaveAsync(
        WeldTraceDbContext db,
        LaboratoryTest test,
        Vessel? vessel,
        Attachment? file,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (file is not null)
        {
            await db.KeepAsync(file, cancellation);
        }

        db.AddRange(test, Signature.Of(test, actor, SpecimenTest.TestedMeaning, test.SignedAt));
        await db.TakeLaboratoryAsync(test, vessel, actor, cancellation);
        return await db.SaveAsync(cancellation);
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Persistence.Mappings;

internal sealed class SiteMapping : IEntityTypeConfiguration<Site>
{
    public void Configure(EntityTypeBuilder<Site> builder)
    {
        builder.IsRecord("sites");
        builder.Property(s => s.Name).HasMaxLength(Site.LongestName);
        builder.Property(s => s.TimeZoneId).HasMaxLength(60);
        builder.Property(s => s.Units).IsWord();
        builder.Property(s => s.RequiredDocument).HasConversion<string>().HasMaxLength(40);
    }
}

internal sealed class SigningKeyMapping : IEntityTypeConfiguration<SigningKey>
{
    public void Configure(EntityTypeBuilder<SigningKey> builder)
    {
        builder.IsRecord("signing_keys");
        builder.Property(k => k.Fingerprint).HasMaxLength(64).IsFixedLength();
        builder.HasIndex(k => k.Fingerprint).IsUnique();
        builder
            .HasIndex(k => k.Until)
            .IsUnique()
            .AreNullsDistinct(false)
            .HasFilter("until IS NULL")
            .HasDatabaseName("ix_signing_keys_one_in_use");
    }
}

internal sealed class PersonMapping : IEntityTypeConfiguration<Person>
{
    public void Configure(EntityTypeBuilder<Person> builder)
    {
        builder.IsRecord("people");
        builder.Property(p => p.PrintedName).HasMaxLength(Person.LongestName);
        builder.Property(p => p.SignInName).HasMaxLength(Person.LongestName);
        builder.Property(p => p.Roles).IsJson();
        builder.HasIndex(p => p.SignInName).IsUnique();
    }
}

internal sealed class ProcedureRevisionMapping : IEntityTypeConfiguration<ProcedureRevision>
{
    public void Configure(EntityTypeBuilder<ProcedureRevision> builder)
    {
        builder.IsRecord("procedure_revisions");
        builder.Property(p => p.Number).HasMaxLength(ProcedureRevision.LongestNumber);
        builder.Property(p => p.Title).HasMaxLength(ProcedureRevision.LongestText);
        builder.Property(p => p.ChangeReason).HasMaxLength(ProcedureRevision.LongestText);
        builder.Property(p => p.State).IsWord();
        builder.Property(p => p.Content).IsJson();
        builder.Property(p => p.Qualified).IsJson();
        builder.HasIndex(p => new { p.Number, p.RevisionIndex }).IsUnique();
        builder
            .HasIndex(p => p.Number)
            .IsUnique()
            .HasFilter("state = 'Released'")
            .HasDatabaseName("ix_procedure_revisions_one_released");
    }
}

internal sealed class VesselDesignMapping : IEntityTypeConfiguration<VesselDesign>
{
    public void Configure(EntityTypeBuilder<VesselDesign> builder)
    {
        builder.IsRecord("vessel_designs");
        builder.Property(d => d.Number).HasMaxLength(VesselDesign.LongestNumber);
        builder.Property(d => d.Title).HasMaxLength(VesselDesign.LongestText);
        builder.Property(d => d.State).IsWord();
        builder.Property(d => d.Content).IsJson();
        builder.HasIndex(d => new { d.Number, d.RevisionIndex }).IsUnique();
    }
}

internal sealed class ToolDesignMapping : IEntityTypeConfiguration<ToolDesign>
{
    public void Configure(EntityTypeBuilder<ToolDesign> builder)
    {
        builder.IsRecord("tool_designs");
        builder.Property(d => d.Number).HasMaxLength(ToolDesign.LongestText);
        builder.Property(d => d.Geometry).IsJson();
        builder.Property(d => d.Upkeep).IsJson();
        builder.Property(d => d.LifeEvidenceSha256).HasMaxLength(64);
        builder.HasIndex(d => new { d.Number, d.RevisionIndex }).IsUnique();
    }
}

internal sealed class ToolMapping : IEntityTypeConfiguration<Tool>
{
    public void Configure(EntityTypeBuilder<Tool> builder)
    {
        builder.IsRecord("tools");
        builder.Property(t => t.Mark).HasMaxLength(Tool.LongestMark);
        builder.Property(t => t.LifeLimit).IsQuantity("life_limit_m");
        builder.Property(t => t.State).IsWord();
        builder.Property(t => t.Retirement).HasConversion<string>().HasMaxLength(40);
        builder.Property(t => t.ShoulderLifeLimit).IsQuantity("shoulder_life_limit_m");
        builder.Property(t => t.End).IsJson();
        builder.Property(t => t.Uses).IsJson();
        builder.Property(t => t.Inspections).IsJson();
        builder.Property(t => t.Parts).IsJson();
        builder.HasIndex(t => t.Mark).IsUnique();
        builder.HasIndex(t => t.DesignId);
    }
}

internal sealed class MachineMapping : IEntityTypeConfiguration<Machine>
{
    public void Configure(EntityTypeBuilder<Machine> builder)
    {
        builder.IsRecord("machines");
        builder.Property(m => m.Name).HasMaxLength(Machine.LongestText);
        builder.Property(m => m.LogColumns).IsJson();
        builder.Property(m => m.LogTokens).IsJson();
        builder.Property(m => m.Nameplate).IsJson();
        builder.Property(m => m.Capability).IsJson();
        builder.Property(m => m.Events).IsJson();
        builder.Property(m => m.Plan).IsJson();
        builder.Property(m => m.Services).IsJson();
        builder.HasIndex(m => m.Name).IsUnique();
    }
}

internal sealed class MaterialLotMapping : IEntityTypeConfiguration<MaterialLot>
{
    public void Configure(EntityTypeBuilder<MaterialLot> builder)
    {
        builder.IsRecord("material_lots");
        builder.Property(l => l.Number).HasMaxLength(MaterialLot.LongestText);
        builder.Property(l => l.Document).IsJson();
        builder.Property(l => l.Results).IsJson();
        builder.HasIndex(l => l.Number).IsUnique();
    }
}

internal sealed class VesselMapping : IEntityTypeConfiguration<Vessel>
{
    public void Configure(EntityTypeBuilder<Vessel> builder)
    {
        builder.IsRecord("vessels");
        builder.Property(v => v.Serial).HasMaxLength(Vessel.LongestText);
        builder.Property(v => v.ProductionLot).HasMaxLength(Vessel.LongestText);
        builder.Property(v => v.State).IsWord();
        builder.Property(v => v.Steps).IsJson();
        builder.Property(v => v.Components).IsJson();
        builder.HasIndex(v => v.Serial).IsUnique();
        builder.HasIndex(v => v.DesignId);
        builder.Property(v => v.Sample).IsJson();
        builder.Property(v => v.Shipment).IsJson();
        builder.HasIndex(v => v.ProductionLot);
        builder.HasIndex(v => v.LotId);
        builder.HasIndex(v => v.Components).HasMethod("gin");
        // Lists show it of a thousand vessels at once, without their routes.
        builder
            .Property<string?>(TracedVessel.NextStepProperty)
            .HasComputedColumnSql(
                $"(({FirstOpenStep}) ->> 'sequence') || ' ' || (({FirstOpenStep}) ->> 'title')",
                stored: true
            );
    }

    // What RouteStep.IsDone says; a test holds them equal.
    private const string FirstOpenStep =
        """jsonb_path_query_first(steps, '$[*] ? (@.state != "passed" && @.state != "waived")')""";
}

internal sealed class WeldRunMapping : IEntityTypeConfiguration<WeldRun>
{
    public void Configure(EntityTypeBuilder<WeldRun> builder)
    {
        builder.IsRecord("weld_runs");
        builder.Property(r => r.Repair).IsJson();
        builder.Property(r => r.Travel).IsWord();
        builder.Property(r => r.State).IsWord();
        builder.Property(r => r.PlannedPath).IsQuantity("planned_path_m");
        builder.Property(r => r.TrackRadius).IsQuantity("track_radius_m");
        builder.Property(r => r.Travelled).IsQuantity("travelled_m");
        builder.Property(r => r.Gate).IsJson();
        builder.Property(r => r.Checks).IsJson();
        builder.Property(r => r.Log).IsJson();
        builder.Property(r => r.PhaseCorrections).IsJson();
        builder.HasIndex(r => r.VesselId);
        builder.HasIndex(r => new { r.ProcedureRevisionId, r.VesselId });
        builder.HasIndex(r => new { r.ToolId, r.VesselId });
        builder.HasIndex(r => new { r.ToolId, r.StartedAt }).IncludeProperties(r => r.VesselId);
        builder.HasIndex(r => new { r.MachineId, r.StartedAt }).IncludeProperties(r => r.VesselId);
        builder
            .HasIndex(r => new { r.ProcedureRevisionId, r.StartedAt })
            .IncludeProperties(r => r.VesselId);
        builder.HasIndex(r => new { r.OperatorId, r.StartedAt }).IncludeProperties(r => r.VesselId);
        builder.HasIndex(r => r.StartedAt).IncludeProperties(r => r.VesselId);
    }
}

internal sealed class SignalReviewMapping : IEntityTypeConfiguration<SignalReview>
{
    public void Configure(EntityTypeBuilder<SignalReview> builder)
    {
        builder.IsRecord("signal_reviews");
        builder.Property(r => r.Seen).IsJson();
        builder.Property(r => r.Conclusion).IsWord();
        builder.Property(r => r.Text).HasMaxLength(SignalReview.LongestText);
        builder.HasIndex(r => r.RunId);
        builder.HasIndex(r => r.VesselId);
    }
}

internal sealed class VesselArchiveMapping : IEntityTypeConfiguration<VesselArchive>
{
    public void Configure(EntityTypeBuilder<VesselArchive> builder)
    {
        builder.IsRecord("vessel_archives");
        builder.Property(a => a.Bundle).IsJson();
        builder.Property(a => a.Files).IsJson();
        builder.Property(a => a.Logs).IsJson();
        builder.HasIndex(a => a.VesselId);
    }
}

internal sealed class FindingMapping : IEntityTypeConfiguration<Finding>
{
    public void Configure(EntityTypeBuilder<Finding> builder)
    {
        builder.IsRecord("findings");
        builder.Property(f => f.Origin).IsWord();
        builder.Property(f => f.State).IsWord();
        builder.Property(f => f.Description).HasMaxLength(Finding.LongestText);
        builder.Property(f => f.Place).IsJson();
        builder.Property(f => f.Disposition).IsJson();
        builder.Property(f => f.Verification).IsJson();
        builder.Property(f => f.Cause).IsJson();
        builder.Property(f => f.Containments).IsJson();
        builder.Property(f => f.Board).IsJson();
        builder.Property(f => f.PlannedRepair).IsJson();
        builder.Property(f => f.Repair).IsJson();
        builder.Property(f => f.EarlierDecisions).IsJson();
        builder.HasIndex(f => f.EvidenceId);
        builder.HasIndex(f => f.VesselId);
        builder.HasIndex(f => f.Number).IsUnique();
        // What was found since a production test is asked before every run.
        builder.HasIndex(f => f.OpenedAt);
    }
}

internal sealed class SignatureMapping : IEntityTypeConfiguration<Signature>
{
    public void Configure(EntityTypeBuilder<Signature> builder)
    {
        builder.IsRecord("signatures");
        builder.Ignore(s => s.Target);
        builder.Property(s => s.SignedKind).HasMaxLength(40);
        builder.Property(s => s.SignedSha256).HasMaxLength(64).IsFixedLength();
        builder.Property(s => s.Meaning).HasMaxLength(Signature.LongestMeaning);
        builder.Property(s => s.PrintedName).HasMaxLength(Person.LongestName);
        builder.Property(s => s.Vessels).IsJson();
        builder.HasIndex(s => s.SignedId);
        // Without a list of what is still to be indexed, through which each search would go.
        builder
            .HasIndex(s => s.Vessels)
            .HasMethod("gin")
            .HasOperators("jsonb_path_ops")
            .HasStorageParameter("fastupdate", false);
    }
}

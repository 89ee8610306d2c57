using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;

namespace WeldTrace.Persistence.Mappings;

internal sealed class CertificateMapping : IEntityTypeConfiguration<Certificate>
{
    public void Configure(EntityTypeBuilder<Certificate> builder)
    {
        builder.IsRecord("certificates");
        builder.Property(c => c.Number).HasMaxLength(Certificate.LongestText);
        builder.Property(c => c.PersonName).HasMaxLength(Person.LongestName);
        builder.Property(c => c.Attests).IsWord();
        builder.Property(c => c.Text).IsJson();
        builder.Property(c => c.FileSha256).HasMaxLength(64);
        builder.Property(c => c.Confirmations).IsJson();
        builder.Property(c => c.Revocations).IsJson();
        builder.HasIndex(c => c.Number).IsUnique();
        builder.HasIndex(c => c.PersonId);
    }
}

internal sealed class ConcessionMapping : IEntityTypeConfiguration<Concession>
{
    public void Configure(EntityTypeBuilder<Concession> builder)
    {
        builder.IsRecord("concessions");
        builder.Property(c => c.RuleId).HasMaxLength(10);
        builder.Property(c => c.Reason).HasMaxLength(Concession.LongestReason);
        builder.Property(c => c.DeclinedBecause).HasMaxLength(Concession.LongestReason);
        builder.Property(c => c.State).IsWord();
        builder.Property(c => c.Only).IsJson();
        builder.Property(c => c.AskedBy).IsJson();
        builder.Property(c => c.DecidedBy).IsJson();
        builder.HasIndex(c => c.VesselId);
    }
}

internal sealed class InstrumentMapping : IEntityTypeConfiguration<Instrument>
{
    public void Configure(EntityTypeBuilder<Instrument> builder)
    {
        builder.IsRecord("instruments");
        builder.Property(i => i.Mark).HasMaxLength(Instrument.LongestText);
        builder.Property(i => i.Measures).IsWord();
        builder.Property(i => i.Text).IsJson();
        builder.Property(i => i.Calibrations).IsJson();
        builder.HasIndex(i => i.Mark).IsUnique();
    }
}

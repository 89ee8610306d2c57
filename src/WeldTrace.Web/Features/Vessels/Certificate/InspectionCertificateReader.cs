using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;
using Certified = WeldTrace.Domain.Certification.Certificate;

namespace WeldTrace.Web.Features.Vessels.Certificate;

/// <summary>Prints the inspection certificate of a vessel; before it is accepted, the same as a report that says so.</summary>
public sealed class InspectionCertificateReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    StampReader stamps
)
{
    public async Task<byte[]?> PrintAsync(
        string serial,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindVesselHistoryAsync(serial, cancellation) is not { } history)
        {
            return null;
        }

        var site = await sites.GetAsync(cancellation);
        var source = new CertificateSource(
            site,
            history,
            await PeopleAsync(db, history, cancellation)
        );
        var vessel = history.Vessel;
        var accepted = vessel.State is VesselState.Accepted or VesselState.Shipped;
        var model = new RecordSheetModel
        {
            Stamp = await stamps.ReadAsync(actor, cancellation),
            RecordAddress = new Uri(address, Routes.Vessel(vessel.Serial)).AbsoluteUri,
            Title = accepted
                ? $"Inspection certificate {vessel.Serial}"
                : $"Inspection report {vessel.Serial}",
            Subtitle = accepted
                ? "Every test, examination and record on which the acceptance rests"
                : "Tests, examinations and records so far; no certificate",
            State = PrintedMarks.Of(DomainMarks.Of(vessel.State), Vessel.StateWord(vessel.State)),
            Notices = accepted
                ? []
                :
                [
                    $"The vessel is {Vessel.StateWord(vessel.State)}. This paper certifies nothing; it lists what is recorded.",
                ],
            Particulars = [.. CertificateParts.Particulars(history)],
            Parts = [.. CertificateParts.Of(source), .. CertificateTrust.Of(source)],
            UncheckedLimits = [.. Traveler.PreparationMapping.Unchecked(history.Material)],
            Signatures = [.. CertificateTrust.Signatures(history)],
        };
        using var pdf = new MemoryStream();
        RecordSheetExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    // Everyone who welded, tested or signed a step, with the certificates of each.
    private static async Task<IReadOnlyList<CertifiedPerson>> PeopleAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        CancellationToken cancellation
    )
    {
        IEnumerable<(Guid Id, string Name, string Did)> acts =
        [
            .. history.Runs.Select(r => (r.OperatorId, r.OperatorName, "welded")),
            .. history.LeakTests.Select(t => (t.InspectorId, t.InspectorName, "tested")),
            .. history.PressureTests.Select(t => (t.InspectorId, t.InspectorName, "tested")),
            .. history.Sections.Select(t => (t.InspectorId, t.InspectorName, "examined")),
            .. history.Laboratory.Select(t => (t.TesterId, t.TesterName, "tested")),
            .. history.SignOffs.Select(s => (s.PersonId, s.PrintedName, "signed off")),
        ];
        var people = acts.GroupBy(p => (p.Id, p.Name)).ToList();
        var ids = people.Select(p => p.Key.Id).ToList();
        var certificates = await db
            .Certificates.AsNoTracking()
            .Where(c => ids.Contains(c.PersonId))
            .OrderBy(c => c.Number)
            .ToListAsync(cancellation);
        return
        [
            .. people.Select(p => new CertifiedPerson(
                p.Key.Name,
                string.Join(", ", p.Select(x => x.Did).Distinct()),
                [.. certificates.Where(c => c.PersonId == p.Key.Id)]
            )),
        ];
    }
}

/// <summary>What a certificate is printed from.</summary>
internal sealed record CertificateSource(
    Domain.Sites.Site Site,
    VesselHistory History,
    IReadOnlyList<CertifiedPerson> People
);

/// <summary>Somebody who worked on the vessel.</summary>
internal sealed record CertifiedPerson(
    string Name,
    string Did,
    IReadOnlyList<Certified> Certificates
);

using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Tracing;

// Certificates and calibrations as they stood on the day of the work.
internal sealed partial class GenealogyBuilder
{
    private void Certify(
        GenealogyNode work,
        GenealogyNode person,
        Guid personId,
        DateTimeOffset at,
        Func<Certificate, bool> covers
    )
    {
        var day = dayOf(at);
        var own = All<Certificate>()
            .Where(c => c.PersonId == personId && covers(c))
            .Select(c => (Certificate: c, Against: CertificateOnDay.Against(c, day)))
            .OrderBy(c => c.Against is not null)
            .ThenByDescending(c => c.Certificate.ExpiresOn)
            .ToList();
        if (own.Count == 0)
        {
            _proofs.Add(new(work, day, person, null, false, "No certificate for it is on record."));
            return;
        }

        var (certificate, against) = own[0];
        var node = Add(
            GenealogyGroup.Certificates,
            certificate,
            $"{CertificateWords.Of(certificate.Attests)}, until {certificate.ExpiresOn:yyyy-MM-dd}"
        );
        Link(person, node, "holds");
        Link(work, node, against is null ? "certified on the day by" : "not covered on the day by");
        _proofs.Add(
            new(
                work,
                day,
                person,
                node,
                against is null,
                against ?? CertificateOnDay.Standing(certificate, day)
            )
        );
    }

    private void Measure(GenealogyNode work, Guid instrumentId, string mark, DateTimeOffset at)
    {
        var day = dayOf(at);
        var instrument = Find<Instrument>(instrumentId);
        var node = Add(
            GenealogyGroup.Instruments,
            new RecordName("instrument", instrumentId, mark),
            instrument?.Text.Description ?? ""
        );
        Link(work, node, "measured with");
        if (_proofs.Any(p => p.Work == work && p.Subject == node))
        {
            return;
        }

        if (instrument is null || CalibrationOnDay.Of(instrument, day) is not { } standing)
        {
            _proofs.Add(
                new(work, day, node, null, false, "No calibration is on record for that day.")
            );
            return;
        }

        var calibration = standing.Calibration;
        var proof = Put(
            new(
                FormattableString.Invariant(
                    $"calibration:{instrumentId:N}:{calibration.On:yyyyMMdd}"
                ),
                GenealogyGroup.Calibrations,
                new RecordName("instrument", instrumentId, mark),
                $"{mark}, {calibration.CertificateNumber}",
                $"{calibration.On:yyyy-MM-dd} by {calibration.Laboratory}"
            )
        );
        Link(node, proof, "calibrated");
        Link(work, proof, "calibrated on the day by");
        _proofs.Add(
            new(
                work,
                day,
                node,
                proof,
                standing.Against is null,
                standing.Against
                    ?? $"Calibrated {calibration.On:yyyy-MM-dd}, good until {calibration.DueOn:yyyy-MM-dd}."
            )
        );
    }
}

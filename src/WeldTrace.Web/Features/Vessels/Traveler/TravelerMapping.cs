using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>Maps the records of a vessel to the printed traveler.</summary>
public static class TravelerMapping
{
    public static TravelerModel Map(TravelerSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var (history, vessel) = (source.History, source.History.Vessel);
        return new TravelerModel
        {
            Stamp = source.Stamp,
            RecordAddress = source.RecordAddress,
            Vessel = new VesselIdentity
            {
                Serial = vessel.Serial,
                Design = $"{history.Design.Number} {history.Design.Title}",
                DesignRevision = history.Design.Revision,
                ProductionLot = vessel.ProductionLot,
                State = PrintedMarks.Of(
                    DomainMarks.Of(vessel.State),
                    Vessel.StateWord(vessel.State)
                ),
                Particulars = Particulars(source),
            },
            Components = [.. vessel.Components.Select(c => Component(source, c))],
            Preparation = [.. PreparationMapping.Map(source)],
            UncheckedLimits = [.. PreparationMapping.Unchecked(history.Material)],
            Route = [.. vessel.Steps.Select(Station)],
            Joints =
            [
                .. history
                    .Design.Content.Joints.Select(j => JointMapping.Map(source, j))
                    .OfType<JointSheet>(),
            ],
            WeldRuns = [.. history.Runs.Select(r => RunMapping.Map(source, r))],
            LeakTests = [.. history.LeakTests.Select(LeakMapping.Map)],
            PressureTests = [.. history.PressureTests.Select(t => PressureMapping.Map(source, t))],
            Sections = [.. history.Sections.Select(s => SectionMapping.Map(source, s))],
            Laboratory = [.. history.Laboratory.Select(LaboratoryMapping.Map)],
            Concessions = [.. ConcessionMapping.Map(history)],
            Findings = [.. history.Findings.Select(f => FindingMapping.Map(f))],
            Signatures = [.. history.Signatures.Select(s => Signature(source, s))],
        };
    }

    private static IReadOnlyList<LabelledValue> Particulars(TravelerSource source)
    {
        var content = source.History.Design.Content;
        var units = source.Site.Units;
        return
        [
            new("Parent material", $"{content.Alloy}-{content.Temper}"),
            new("Inner diameter", Texts.Of(content.InnerDiameter, units)),
            new("Wall thickness", Texts.Of(content.WallThickness, units)),
            new("Volume", Texts.Of(content.Volume, units)),
            new("Maximum expected operating pressure", Texts.Of(content.Pressures.Meop, units)),
            new("Source of the test factors", content.Pressures.FactorSource),
            .. Lot(source),
        ];
    }

    private static IEnumerable<LabelledValue> Lot(TravelerSource source)
    {
        if (source.History.Lot is { } lot)
        {
            yield return new("Production lot", ProductionLot.StateWord(lot.State));
        }

        if (source.History.Vessel.Sample is { } duty)
        {
            yield return new("Sacrificed", $"{SamplePlan.KindWord(duty.Kind)} sample of the lot");
        }
    }

    private static ComponentLine Component(TravelerSource source, Component component)
    {
        var lot = source.History.Material.Lots.FirstOrDefault(l => l.Id == component.MaterialLotId);
        return new ComponentLine
        {
            Name = component.Name,
            Serial = component.Serial,
            Material = lot is null
                ? component.MaterialLotNumber
                : $"{component.MaterialLotNumber}, {lot.Alloy}-{lot.Temper}, {lot.Form}",
            CastNumber = component.CastNumber,
            Certificate = lot?.Document is { } document
                ? $"{InspectionDocuments.Word(document.Type)}, {lot.CertificateNumber}"
                : lot?.CertificateNumber,
        };
    }

    private static RouteStation Station(RouteStep step) =>
        new()
        {
            Number = step.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Title = step.Title,
            State = PrintedMarks.Of(DomainMarks.Of(step.State), RouteStep.StateWord(step.State)),
            Point = step.Stop switch
            {
                StopPoint.Hold => StepPoint.Hold,
                StopPoint.Witness => StepPoint.Witness,
                _ => StepPoint.None,
            },
            DoneBy = step.DoneBy,
            DoneAt = step.DoneAt,
        };

    private static SignatureEntry Signature(TravelerSource source, Signature signature)
    {
        var record = source.History.Records.FirstOrDefault(r => r.Id == signature.SignedId);
        var label = record is null ? signature.SignedKind : record.Label;
        return new SignatureEntry(
            signature.PrintedName,
            signature.Meaning,
            signature.At,
            FormattableString.Invariant($"{label}, version {signature.SignedVersion}"),
            signature.SignedSha256
        );
    }
}

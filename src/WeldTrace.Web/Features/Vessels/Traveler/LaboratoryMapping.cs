using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class LaboratoryMapping
{
    public static Documents.Traveler.LaboratoryLine Map(LaboratoryTest test) =>
        new(
            TestKinds.Of(test.Test).Word,
            test.VesselId is null
                ? $"{test.Subject.Sample}, for lot {test.ProductionLot}"
                : test.Subject.Sample,
            $"{test.Subject.JointCode}, {test.Subject.Place}",
            FormattableString.Invariant($"{test.Header.TestedOn:yyyy-MM-dd}"),
            test.TesterName,
            PrintedMarks.Of(DomainMarks.Of(test.Verdict), TestRecord.VerdictWord(test.Verdict)),
            test.VerdictSentence
        );
}

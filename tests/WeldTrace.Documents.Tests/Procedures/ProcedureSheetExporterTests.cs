using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Procedures;

public sealed class ProcedureSheetExporterTests
{
    private static readonly byte[] Sample = WrittenPdf.Bytes(SampleProcedure.Model());

    [Fact]
    public void Write_ReleasedRevision_KeepsTheOrderOfItsParts()
    {
        SampleFolder.Keep("procedure.pdf", Sample);
        var text = WrittenPdf.Text(Sample);
        string[] order =
        [
            "WPS 12 revision C",
            "WPQR 9, 2031-02-17",
            "Local codes, the design authority and licensed practice decide.",
            "Unchecked limits",
            "Material group",
            "Parameter windows",
            "Clamping force",
            "Computed figures",
            "Weld pitch",
            "Travel speed over spindle speed: 200 / 800",
            "Pass layout",
            "Instructions",
            "Changes from the revision before",
            "a7e2c90b14d8f366",
            "ISO 25239-4:2020, clause 7",
        ];

        var places = order.Select(part => text.IndexOf(part, StringComparison.Ordinal)).ToArray();

        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Write_ReleasedRevision_HasNoRestriction() =>
        Assert.DoesNotContain("Restricted use", WrittenPdf.Text(Sample), StringComparison.Ordinal);

    [Fact]
    public void Write_UncheckedSource_IsMarked()
    {
        var lines = WrittenPdf.Text(Sample);

        Assert.Contains("against own copy by L. Vaz", lines, StringComparison.Ordinal);
        Assert.Single(lines.Split("not checked").Skip(1));
    }

    [Fact]
    public void Write_TrialRevision_SaysThatItIsPreliminaryAndRestricted()
    {
        var model = SampleProcedure.Model();
        var trial = model with
        {
            Identity = model.Identity with
            {
                IsPreliminary = true,
                State = new StateMark("trial", MarkShape.HalfDisc),
            },
            Restriction = "Test pieces only; not for production.",
        };

        var text = WrittenPdf.Text(WrittenPdf.Bytes(trial));

        Assert.Contains("pWPS 12 revision C", text, StringComparison.Ordinal);
        Assert.Contains(
            "Preliminary welding procedure specification",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("Restricted use", text, StringComparison.Ordinal);
        Assert.Contains("Test pieces only; not for production.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_OnlyWhatIsRequired_FitsOnePage()
    {
        var model = SampleProcedure.Model();
        var bare = new ProcedureSheetModel
        {
            Stamp = model.Stamp,
            RecordAddress = model.RecordAddress,
            Identity = model.Identity,
        };

        var page = Assert.Single(WrittenPdf.Pages(WrittenPdf.Bytes(bare)));

        Assert.Contains("Nothing has been signed yet.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter windows", page, StringComparison.Ordinal);
    }
}

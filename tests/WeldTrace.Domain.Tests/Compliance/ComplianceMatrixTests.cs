using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Findings;
using WeldTrace.TestSupport.Records;
using Xunit;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Domain.Tests.Compliance;

/// <summary>
/// NASA-STD-5006A w/Change 2, GWR 1 and appendix B: a matrix with requirement, applicability, evidence and comment. What no record shows
/// is never called met.
/// </summary>
public sealed class ComplianceMatrixTests
{
    [Fact]
    public void AVesselThatIsOnlyPlanned_ShowsOnlyItsMaterial()
    {
        var lines = Of(new SampleShop());

        Assert.Equal(ComplianceMatrix.Requirements, lines.Select(l => l.Requirement));
        Assert.Equal(
            ["22"],
            lines.Where(l => l.State == ComplianceState.Shown).Select(l => l.Requirement.Number)
        );
        Assert.All(
            lines.Where(l => l.State != ComplianceState.Shown),
            l => Assert.True(l.Comment.Length > 0, l.Requirement.Number)
        );
    }

    [Fact]
    public void AWeldedVessel_ShowsItsGatesChecksLogsAndSignatures_WithTheRecords()
    {
        var shop = new SampleShop().Reach(30);
        var lines = Of(shop);

        Assert.All(
            ["2", "4", "6", "7", "10", "11", "12"],
            number => Assert.Equal(ComplianceState.Shown, Line(lines, number).State)
        );
        Assert.Contains(shop.Tool.Id, Line(lines, "6").Evidence.Select(e => e.Id));
        Assert.Equal(shop.Runs.Select(r => r.Id), Line(lines, "11").Evidence.Select(e => e.Id));
        Assert.Equal(ComplianceState.NotShown, Line(lines, "18").State);
        Assert.Equal(ComplianceState.NotShown, Line(lines, "1").State);
    }

    [Fact]
    public void ARecordThatIsNotHandedOn_IsNoEvidence()
    {
        var shop = new SampleShop().Reach(30);

        var line = Line(ComplianceMatrix.Of(shop.Vessel, shop.Design.Content, [.. shop.Runs]), "6");

        Assert.NotEmpty(line.Evidence);
        Assert.DoesNotContain(shop.Tool.Id, line.Evidence.Select(e => e.Id));
    }

    [Fact]
    public void ARunWithoutItsLog_MakesTheLineOnlyPartlyShown_AndIsNamed()
    {
        var shop = new SampleShop().Reach(20);
        var running = shop.Running(20);

        var line = Line(Of(shop, running), "11");

        Assert.Equal(ComplianceState.Partly, line.State);
        Assert.Contains(running.Label, line.Comment, StringComparison.Ordinal);
        Assert.DoesNotContain(running.Id, line.Evidence.Select(e => e.Id));
    }

    [Fact]
    public void AFinding_IsAskedForOnceItIsThere_AndShownOnceItIsClosed()
    {
        var shop = new SampleShop().Reach(30);
        var before = Line(Of(shop), "13");
        var finding = shop.Report();
        var open = Line(Of(shop), "13");
        shop.Settle(finding);
        var closed = Line(Of(shop), "13");

        Assert.Equal(FindingState.Closed, finding.State);
        Assert.Equal(
            [ComplianceState.NotApplicable, ComplianceState.NotShown, ComplianceState.Shown],
            new[] { before, open, closed }.Select(l => l.State)
        );
        Assert.Contains(finding.Label, open.Comment, StringComparison.Ordinal);
    }

    [Fact]
    public void ALeakTest_CountsWhenItPassedAndIsSigned()
    {
        var shop = new SampleShop().Reach(30);
        var tight = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        var unsigned = Line(Of(shop, tight), "18");
        Accept.Value(SampleTests.Sign(shop, tight, SamplePeople.Inspector));

        Assert.Equal(ComplianceState.NotShown, unsigned.State);
        Assert.Equal(ComplianceState.Shown, Line(Of(shop, tight), "18").State);
    }

    private static ComplianceLine Line(IReadOnlyList<ComplianceLine> lines, string number) =>
        lines.Single(l => l.Requirement.Number == number);

    private static IReadOnlyList<ComplianceLine> Of(
        SampleShop shop,
        params IReadOnlyList<Record> more
    ) =>
        ComplianceMatrix.Of(
            shop.Vessel,
            shop.Design.Content,
            [
                shop.Vessel,
                shop.Design,
                shop.Lot,
                shop.Procedure,
                shop.Tool,
                .. shop.Runs.Concat(more).Distinct(),
                .. shop.Findings,
            ]
        );
}

using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Limits;

public sealed class LimitTableTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    [Theory]
    [InlineData("abc", "Rows[0].Cells[3]")]
    [InlineData("-1", "Rows[0].Cells[3]")]
    [InlineData("", "Rows[0].Cells[3]")]
    public void Enter_FactorThatIsNoNumber_NamesTheCell(string factor, string field)
    {
        var entered = Enter([
            ["21", "any", "any", factor, "O"],
        ]);

        Assert.Equal(field, Assert.Single(entered.Refusals).Field);
    }

    [Fact]
    public void Enter_UnknownChoiceAndMissingSource_TellsBoth()
    {
        var entered = LimitTable.Enter(
            "T-1",
            LimitKind.TensileFactors,
            new LimitText(
                "Factors",
                new LimitSource("", "2", "3"),
                [
                    ["21", "any", "any", "1", "F"],
                ]
            ),
            SamplePeople.QualityManager,
            SampleTime.Start
        );

        Assert.Equal(
            ["Document", "Rows[0].Cells[4]"],
            entered.Refusals.Select(r => r.Field).Order()
        );
    }

    [Fact]
    public void Enter_ByEngineer_Refused() =>
        Assert.Equal(
            "role",
            Assert
                .Single(
                    Enter(
                        [
                            ["21", "any", "any", "1", "O"],
                        ],
                        SamplePeople.Engineer
                    ).Refusals
                )
                .Code
        );

    [Fact]
    public void Revise_Current_SupersedesItAndKeepsItsText()
    {
        var table = Accept.Value(
            Enter([
                ["21", "any", "any", "1.0", "O"],
            ])
        );
        var before = table.Text;

        var next = Accept.Value(
            table.Revise(
                before with
                {
                    Rows =
                    [
                        ["21", "any", "any", "0.9", "O"],
                    ],
                },
                "amendment",
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );

        Assert.Equal(("T-1 edition 2", next.Id), (next.Label, table.SupersededById));
        Assert.Same(before, table.Text);
        var again = table.Revise(before, "x", SamplePeople.QualityManager, SampleTime.Start);
        Assert.Equal("superseded", Assert.Single(again.Refusals).Code);
    }

    [Fact]
    public void CheckAgainst_OwnCopy_MarksItOnce()
    {
        var table = Accept.Value(
            Enter([
                ["21", "any", "any", "1.0", "O"],
            ])
        );
        Assert.False(table.Reference.WasChecked);

        Accept.All(
            table.CheckAgainst("shelf 3", Today, SamplePeople.QualityManager, SampleTime.Start)
        );

        Assert.True(table.Reference.WasChecked);
        Assert.Equal(("Gil Navarro", Today), (table.OwnCheck?.ByName, table.OwnCheck?.On));
        var again = table.CheckAgainst(
            "shelf 3",
            Today,
            SamplePeople.QualityManager,
            SampleTime.Start
        );
        Assert.Equal("state", Assert.Single(again.Refusals).Code);
    }

    [Fact]
    public void Find_InTableOfAnotherKind_IsAMistakeOfTheCaller() =>
        Assert.Throws<ArgumentException>(() =>
            MaterialGroups.Of(SampleLimits.Of(ShippedLimits.Tensile), "6061")
        );

    private static Outcome<LimitTable> Enter(
        IReadOnlyList<IReadOnlyList<string>> rows,
        Actor? actor = null
    ) =>
        LimitTable.Enter(
            "T-1",
            LimitKind.TensileFactors,
            new LimitText("Factors", new LimitSource("EN 1", "2004", "2"), rows),
            actor ?? SamplePeople.QualityManager,
            SampleTime.Start
        );
}

using System.Text;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Tooling;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Features.Welding.ReadLog;

namespace WeldTrace.Web.Tests.Features.Welding.ReadLog;

/// <summary>Files that are no good: each is refused with what is wrong and where, and leaves nothing behind in the records.</summary>
public sealed class BadLogTests(PostgresServerFixture server)
{
    private const int Middle = 1001;

    [Fact]
    public Task Empty() => RefusedAsync([], LogProblemCode.EmptyFile, null, null);

    [Fact]
    public Task PdfRenamed() =>
        RefusedAsync(
            Encoding.Latin1.GetBytes(
                "%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n1 0 obj\n<<>>\nendobj\n"
            ),
            LogProblemCode.BinaryContent,
            null,
            null
        );

    [Fact]
    public Task TruncatedInMidLine()
    {
        var text = SampleLogs.Text();
        var cut = text[..(text.IndexOf('\n', text.Length / 2) + 30)];
        return RefusedAsync(
            Encoding.UTF8.GetBytes(cut),
            LogProblemCode.TruncatedLine,
            cut.Count(c => c == '\n') + 1,
            text.Split('\n')[0].Split(',')[cut.Split('\n')[^1].Count(c => c == ',')]
        );
    }

    [Fact]
    public Task MixedDecimalMarks() =>
        RefusedAsync(
            SampleLogs.WithLine(Middle, line => Field(line, 3, "8,012")),
            LogProblemCode.MixedDecimalMark,
            Middle,
            null
        );

    [Fact]
    public Task TimeGoesBack() =>
        RefusedAsync(
            SampleLogs.WithLine(Middle, line => Field(line, 0, "1.0000")),
            LogProblemCode.TimeBackwards,
            Middle,
            "t [s]"
        );

    [Fact]
    public Task TimeTwice()
    {
        var before = SampleLogs.Text().Split('\n')[Middle - 2].Split(',')[0];
        return RefusedAsync(
            SampleLogs.WithLine(Middle, line => Field(line, 0, before)),
            LogProblemCode.DuplicateTime,
            Middle,
            "t [s]"
        );
    }

    [Fact]
    public Task NotANumberAtAll() =>
        RefusedAsync(
            SampleLogs.WithLine(Middle, line => Field(line, 5, "NaN")),
            LogProblemCode.NotFinite,
            Middle,
            "torque [Nm]"
        );

    [Fact]
    public Task GapInAColumn() =>
        RefusedAsync(
            SampleLogs.WithLine(Middle, line => Field(line, 5, "")),
            LogProblemCode.MissingValue,
            Middle,
            "torque [Nm]"
        );

    [Fact]
    public Task UnitNotKnown() =>
        RefusedAsync(
            SampleLogs.WithLine(
                1,
                line => line.Replace("[kN]", "[kNewt]", StringComparison.Ordinal)
            ),
            LogProblemCode.UnknownUnit,
            null,
            "Fz [kNewt]",
            form => form.Columns[3].Channel = nameof(LogChannel.AxialForce)
        );

    [Fact]
    public Task ColumnMissing() =>
        RefusedAfterGoodLogAsync(
            string.Join('\n', SampleLogs.Text().Split('\n').Select(WithoutLast)),
            LogProblemCode.MissingColumn,
            "spindle power [kW]"
        );

    [Fact]
    public Task ColumnRenamed() =>
        RefusedAfterGoodLogAsync(
            SampleLogs.Text().Replace("torque [Nm]", "Mz [Nm]", StringComparison.Ordinal),
            LogProblemCode.RenamedColumn,
            "Mz [Nm]"
        );

    [Fact]
    public Task ColumnRepeated() =>
        RefusedAfterGoodLogAsync(
            SampleLogs.Text().Replace("Fx [kN]", "Fz [kN]", StringComparison.Ordinal),
            LogProblemCode.RepeatedColumn,
            "Fz [kN]"
        );

    private async Task RefusedAsync(
        byte[] file,
        LogProblemCode code,
        long? line,
        string? column,
        Action<ReadLogForm>? edit = null
    )
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var result = await shop.BringAsync(id, file, edit: edit);

        var problem = Assert.Single(result.Problems, p => p.Code == code);
        Assert.Equal(line, problem.Line);
        Assert.Equal(column ?? problem.Column, problem.Column);
        Assert.NotEmpty(problem.Sentence);
        Assert.NotEmpty(problem.Remedy);
        await AssertNothingKeptAsync(shop, id);
    }

    // The machine's mapping is remembered from the log of an earlier run on another vessel.
    private async Task RefusedAfterGoodLogAsync(string text, LogProblemCode code, string column)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        await shop.RememberAsync();

        var result = await shop.BringAsync(id, Encoding.UTF8.GetBytes(text));

        var problem = Assert.Single(result.Problems, p => p.Code == code);
        Assert.Equal(column, problem.Column);
        Assert.NotEmpty(problem.Comparison);
        await AssertNothingKeptAsync(shop, id);
    }

    private static async Task AssertNothingKeptAsync(WeldShop shop, Guid id)
    {
        Assert.Null((await shop.RunAsync(id)).Log);
        Assert.Equal(0, await shop.Database.ReadAsync(db => db.ProcessLogs.CountAsync()));
        Assert.Equal(0, await shop.Database.ReadAsync(db => db.ProcessLogChunks.CountAsync()));
        Assert.Equal(
            0,
            await shop.Database.ReadAsync(db =>
                db.Attachments.CountAsync(a => a.MediaType == "text/csv")
            )
        );
        Assert.Equal(
            ChargeBasis.PlannedPath,
            Assert.Single((await shop.ToolNowAsync()).Uses).Basis
        );
    }

    private static string Field(string line, int index, string value)
    {
        var fields = line.Split(',');
        fields[index] = value;
        return string.Join(',', fields);
    }

    private static string WithoutLast(string line) =>
        line.LastIndexOf(',') is > 0 and var end ? line[..end] : line;
}

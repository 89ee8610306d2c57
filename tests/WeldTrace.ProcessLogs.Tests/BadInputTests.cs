using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Each kind of bad file: what is said, where, and that nothing is kept.</summary>
public sealed class BadInputTests
{
    public static TheoryData<string, string, LogProblemCode, long, string> Lines =>
        new()
        {
            { "NaN", "0.4,NaN,200.0,-3.0040", LogProblemCode.NotFinite, 6, "Fz [kN]" },
            { "infinite", "0.4,-inf,200.0,-3.0040", LogProblemCode.NotFinite, 6, "Fz [kN]" },
            { "printed NaN", "0.4,1.#QNAN,200.0,-3.0040", LogProblemCode.NotFinite, 6, "Fz [kN]" },
            {
                "beyond floating point",
                "0.4,1e400,200.0,-3.0040",
                LogProblemCode.NotFinite,
                6,
                "Fz [kN]"
            },
            { "words", "0.4,broken wire,200.0,-3.0040", LogProblemCode.NotANumber, 6, "Fz [kN]" },
            { "two points", "0.4,8.1.2,200.0,-3.0040", LogProblemCode.NotANumber, 6, "Fz [kN]" },
            { "a lone minus", "0.4,-,200.0,-3.0040", LogProblemCode.NotANumber, 6, "Fz [kN]" },
            { "no value", "0.4,,200.0,-3.0040", LogProblemCode.MissingValue, 6, "Fz [kN]" },
            { "doubled time", "0.3,8.000,200.0,-3.0040", LogProblemCode.DuplicateTime, 6, "t [s]" },
            {
                "time going back",
                "0.1,8.000,200.0,-3.0040",
                LogProblemCode.TimeBackwards,
                6,
                "t [s]"
            },
            { "too few fields", "0.4,8.000,200.0", LogProblemCode.WrongFieldCount, 6, "" },
            { "an empty line", "", LogProblemCode.WrongFieldCount, 6, "" },
            { "decimal commas", "0,4,8,000,200,0,-3,0040", LogProblemCode.MixedDecimalMark, 6, "" },
            {
                "a quoted decimal comma",
                "0.4,\"8,000\",200.0,-3.0040",
                LogProblemCode.MixedDecimalMark,
                6,
                "Fz [kN]"
            },
        };

    [Theory]
    [MemberData(nameof(Lines))]
    public async Task ReadAsync_BadLine_SaysWhereAndKeepsNothing(
        string what,
        string line,
        LogProblemCode code,
        long number,
        string column
    )
    {
        Assert.NotEmpty(what);
        var result = await new SmallLog().WithLine(6, line).ReadAsync();

        Assert.Null(result.Log);
        var problem = result.Problems[0];
        Assert.Equal((code, number, column), (problem.Code, problem.Line, problem.Column ?? ""));
        Assert.Contains($"ine {number}", problem.Sentence, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public async Task ReadAsync_DecimalPointAmongCommas_SaysWhere()
    {
        var text = new SmallLog()
            .Text.Replace(',', ';')
            .Replace('.', ',')
            .Replace("8,125", "8.125", StringComparison.Ordinal);
        var result = await SmallLog.ReadAsync(text);

        Assert.Equal(6, result.Problems.Count);
        Assert.All(
            result.Problems,
            problem => Assert.Equal(LogProblemCode.MixedDecimalMark, problem.Code)
        );
        Assert.Equal((3, "Fz [kN]"), (result.Problems[0].Line, result.Problems[0].Column));
        Assert.Contains("decimal comma", result.Problems[0].Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n  \n")]
    [InlineData("\uFEFF")]
    public async Task ReadAsync_NothingInIt_IsEmptyFile(string text) =>
        Assert.Equal([LogProblemCode.EmptyFile], Codes(await SmallLog.ReadAsync(text)));

    [Fact]
    public async Task ReadAsync_HeaderAlone_HasNoData() =>
        Assert.Equal(
            [LogProblemCode.NoDataRows],
            Codes(await SmallLog.ReadAsync(SmallLog.Header + "\n"))
        );

    [Fact]
    public async Task ReadAsync_NineRows_AreTooFew()
    {
        var text = string.Join('\n', new SmallLog().Text.Split('\n')[..10]) + "\n";
        var result = await SmallLog.ReadAsync(text);

        Assert.Equal([LogProblemCode.TooFewRows], Codes(result));
        Assert.Contains("9 rows", result.Problems[0].Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\n2.8,8.3")]
    [InlineData("\n2.8,8.375,200.0,-3.02")]
    [InlineData("\n2.8,8.375,200.0,-")]
    [InlineData("\n2.8,8.375,200.0,")]
    [InlineData("\n2.8,")]
    public async Task ReadAsync_EndsInMidLine_IsTruncated(string end)
    {
        var text = new SmallLog().Text;
        var cut = text[..text.IndexOf("\n2.8,", StringComparison.Ordinal)] + end;
        var result = await SmallLog.ReadAsync(cut);

        Assert.Equal([LogProblemCode.TruncatedLine], Codes(result));
        Assert.Equal(30, result.Problems[0].Line);
    }

    [Fact]
    public async Task ReadAsync_WholeLastLineWithoutEnd_IsTaken()
    {
        var text = new SmallLog().Text.TrimEnd('\n');
        var log = await SmallLog.ReadWholeAsync(text);
        Assert.Equal(30, log.Header.SampleCount);
        Assert.True(log.Header.CsvIsOriginal);
    }

    [Theory]
    [InlineData("t [s],Fz [kN],feed [mm/min]", LogProblemCode.MissingColumn, "z [mm]")]
    [InlineData(
        "t [s],Fz [kN],feed [mm/min],depth [mm]",
        LogProblemCode.RenamedColumn,
        "depth [mm]"
    )]
    [InlineData("t [s],Fz [kN],Fz [kN],z [mm]", LogProblemCode.RepeatedColumn, "Fz [kN]")]
    [InlineData("t [s],Fz [kN],feed [mm/min],z [mm],extra", LogProblemCode.UnknownColumn, "extra")]
    [InlineData("t [s],Fz [N],feed [mm/min],z [mm]", LogProblemCode.RenamedColumn, "Fz [N]")]
    public async Task ReadAsync_OtherColumns_ShowsBothSides(
        string header,
        LogProblemCode code,
        string column
    )
    {
        var fields = header.Split(',').Length;
        var rows = Enumerable
            .Range(0, 20)
            .Select(row =>
                string.Join(',', Enumerable.Range(0, fields).Select(field => $"{row}.{field}"))
            );
        var result = await SmallLog.ReadAsync(header + "\n" + string.Join('\n', rows) + "\n");

        Assert.Null(result.Log);
        var problem = Assert.Single(result.Problems, problem => problem.Code == code);
        Assert.Equal(column, problem.Column);
        Assert.Contains(problem.Comparison, row => row.Agreement == ColumnAgreement.Same);
        Assert.Contains(problem.Comparison, row => row.Agreement != ColumnAgreement.Same);
    }

    [Fact]
    public async Task ReadAsync_ColumnsInAnotherOrder_AreFoundByName()
    {
        var text =
            "z [mm],Fz [kN],t [s],feed [mm/min]\n"
            + string.Concat(Enumerable.Range(0, 12).Select(i => $"-3.5,8.25,{i}.0,200\n"));
        var log = await SmallLog.ReadWholeAsync(text);

        Assert.Equal(LogChannel.Time, log.Header.Columns[2].Channel);
        Assert.Equal(0.0035, log.Header.Columns[0].ToSi(-3.5), 12);
    }

    [Theory]
    [InlineData(LogChannel.AxialForce, "kip")]
    [InlineData(LogChannel.AxialForce, "mm")]
    [InlineData(LogChannel.Torque, "")]
    public async Task ReadAsync_UnitNotKnownForTheChannel_OffersUnits(
        LogChannel channel,
        string unit
    )
    {
        var mapping = new LogMapping([
            SmallLog.Mapping.Columns[0],
            new("Fz [kN]", channel, unit),
            .. SmallLog.Mapping.Columns.Skip(2),
        ]);
        var result = await SmallLog.ReadAsync(new SmallLog().Text, mapping);

        Assert.Equal([LogProblemCode.UnknownUnit], Codes(result));
        Assert.Contains("Fz [kN]", result.Problems[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("N", result.Problems[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReadAsync_UnitRowSaysAnotherUnit_IsRefused()
    {
        var text =
            "t,Fz\ns,N\n" + string.Concat(Enumerable.Range(0, 12).Select(i => $"{i}.0,8000\n"));
        var mapping = new LogMapping([
            new("t", LogChannel.Time, "s"),
            new("Fz", LogChannel.AxialForce, "kN"),
        ]);
        var result = await SmallLog.ReadAsync(text, mapping);

        Assert.Equal([LogProblemCode.UnitChanged], Codes(result));
    }

    [Fact]
    public async Task ReadAsync_MappingWithoutTimeOrTwiceTheSame_IsRefused()
    {
        var mapping = new LogMapping([
            new("a", LogChannel.Torque, "Nm"),
            new("b", LogChannel.Torque, "Nm", 0),
        ]);
        var result = await SmallLog.ReadAsync(new SmallLog().Text, mapping);

        Assert.All(
            result.Problems,
            problem => Assert.Equal(LogProblemCode.MappingInvalid, problem.Code)
        );
        Assert.Equal(3, result.Problems.Count);
    }

    [Theory]
    [InlineData("%PDF-1.7\n1,2\n3,4\n", "PDF")]
    [InlineData("PK\u0003\u0004", "ZIP")]
    [InlineData("a,b\n\u0001\u0002,3\n", "no text")]
    public async Task ReadAsync_RenamedDocument_SaysWhatItIs(string content, string name)
    {
        var result = await SmallLog.ReadAsync(Encoding.Latin1.GetBytes(content));

        Assert.Equal([LogProblemCode.BinaryContent], Codes(result));
        Assert.Contains(name, result.Problems[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReadAsync_LineWithoutEnd_IsTooLong()
    {
        var text = new SmallLog().Text + new string('1', 600_000);
        Assert.Equal([LogProblemCode.LineTooLong], Codes(await SmallLog.ReadAsync(text)));
    }

    [Fact]
    public async Task ReadAsync_ManyBadRows_GivesTheFirstTwenty()
    {
        var text = new SmallLog().Text.Replace("200.0", "x", StringComparison.Ordinal);
        var result = await SmallLog.ReadAsync(text);

        Assert.Equal(20, result.Problems.Count);
        Assert.Equal(
            Enumerable.Range(2, 20).Select(line => (long?)line),
            result.Problems.Select(problem => problem.Line)
        );
    }

    [Fact]
    public async Task ReadAsync_TextInTheFile_CannotBreakTheMessage()
    {
        var result = await new SmallLog()
            .WithLine(6, $"0.4,{new string('\u0007', 5)}<script>{new string('a', 500)},200.0,-3")
            .ReadAsync();
        Assert.DoesNotContain(
            result.Problems,
            problem => problem.Sentence.Length > 200 || problem.Sentence.Any(char.IsControl)
        );
    }

    private static IEnumerable<LogProblemCode> Codes(LogReadResult result)
    {
        Assert.Null(result.Log);
        return result.Problems.Select(problem => problem.Code);
    }
}

using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class CanonicalJsonTests
{
    private const char HalfPair = '\ud83d';

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{} {}")]
    [InlineData("{\"a\":1,}")]
    [InlineData("{\"a\":1,\"a\":2}")]
    [InlineData("{\"b\":{\"a\":1,\"\\u0061\":2}}")]
    [InlineData("[1,/* comment */2]")]
    [InlineData("\"\\ud83d\"")]
    [InlineData("\"\\ude02\\ud83d\"")]
    [InlineData("{\"\\ud83d\":1}")]
    [InlineData("NaN")]
    [InlineData("[Infinity]")]
    [InlineData("1e400")]
    [InlineData("-1e400")]
    [InlineData("01")]
    [InlineData("+1")]
    [InlineData(".5")]
    [InlineData("'a'")]
    [InlineData("\"tab\there\"")]
    [InlineData("9007199254740993")]
    [InlineData("[-9007199254740993]")]
    public void FromText_NotStrictJson_IsRefused(string text) =>
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromText(text));

    [Theory]
    [InlineData(new byte[] { 0xEF, 0xBB, 0xBF, (byte)'1' })]
    [InlineData(new byte[] { (byte)'"', 0xC3, (byte)'"' })]
    [InlineData(new byte[] { (byte)'"', 0xED, 0xA0, 0x80, (byte)'"' })]
    [InlineData(new byte[] { (byte)'"', 0xC0, 0x80, (byte)'"' })]
    [InlineData(new byte[] { (byte)'1', 0x00 })]
    public void FromText_NotPlainUtf8_IsRefused(byte[] utf8) =>
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromText(utf8));

    [Fact]
    public void FromText_DeepNesting_IsRefusedOneLevelPastTheLimit()
    {
        var limits = new JsonLimits(1000, 10);

        Assert.Equal(20, CanonicalJson.FromText(Nested(10), limits).Length);
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromText(Nested(11), limits));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromText(Nested(100_000)));
    }

    [Fact]
    public void FromText_LongText_IsRefusedOneBytePastTheLimit()
    {
        var limits = new JsonLimits(10, 10);

        Assert.Equal(10, CanonicalJson.FromText("\"12345678\"", limits).Length);
        Assert.Throws<CanonicalJsonException>(() =>
            CanonicalJson.FromText("\"123456789\"", limits)
        );
    }

    [Fact]
    public void FromText_ControlCharacters_AreEscapedAsTheStandardSays()
    {
        var text = CanonicalJson.TextOf("\u0000\b\t\n\u000b\f\r\u001f\"\\/<>&+'\u007f\u2028é");

        Assert.Equal("\"\\u0000\\b\\t\\n\\u000b\\f\\r\\u001f\\\"\\\\/<>&+'\u007f\u2028é\"", text);
    }

    [Fact]
    public void FromObject_Members_AreSortedByUtf16Units()
    {
        var members = new Dictionary<string, int>
        {
            ["\ufb33"] = 1,
            ["\U0001F602"] = 2,
            ["b"] = 3,
            ["B"] = 4,
        };

        // U+1F602 is D83D DE02 in UTF-16, so it comes before U+FB33.
        Assert.Equal(
            "{\"B\":4,\"b\":3,\"\U0001F602\":2,\"\ufb33\":1}",
            CanonicalJson.TextOf(members)
        );
    }

    [Fact]
    public void FromObject_Record_HasCamelCaseNames() =>
        Assert.Equal(
            """{"metres":1.25,"name":null}""",
            CanonicalJson.TextOf(new Sample(null, 1.25))
        );

    public static TheoryData<object> Unprintable =>
        new()
        {
            double.NaN,
            new Sample(null, double.PositiveInfinity),
            "half " + HalfPair,
            new Dictionary<string, int> { ["half " + HalfPair] = 1 },
            new[] { long.MaxValue },
        };

    [Theory]
    [MemberData(nameof(Unprintable))]
    public void FromObject_ValueWithoutCanonicalForm_IsRefused(object value) =>
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromObject(value));

    public static TheoryData<JsonNode> UnprintableNodes =>
        new()
        {
            JsonValue.Create(double.NaN),
            JsonValue.Create("half " + HalfPair),
            JsonValue.Create(HalfPair),
            new JsonObject { ["half " + HalfPair] = 1 },
            JsonNode.Parse("[\"\\ud83d\"]")!,
            JsonNode.Parse("{\"a\":1,\"a\":2}")!,
        };

    [Theory]
    [MemberData(nameof(UnprintableNodes))]
    public void FromNode_ValueWithoutCanonicalForm_IsRefused(JsonNode node) =>
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromNode(node));

    [Fact]
    public void FromNode_EveryKindOfValue_IsWritten()
    {
        var node = new JsonObject
        {
            ["id"] = SampleEntries.Vessel,
            ["none"] = null,
            ["letter"] = 'x',
            ["list"] = new JsonArray(1, 2.50m, true, "é"),
        };

        Assert.Equal(
            """{"id":"0198c0de-0000-7000-8000-00000000000a","letter":"x","list":[1,2.5,true,"é"],"none":null}""",
            Encoding.UTF8.GetString(CanonicalJson.FromNode(node))
        );
    }

    [Fact]
    public void FromText_CanonicalText_StaysAsItIs() =>
        Gen.Dictionary(Gen.String[Gen.Char.AlphaNumeric, 0, 8], Gen.Double)
            .Where(members => members.Values.All(double.IsFinite))
            .Sample(members =>
            {
                var canonical = CanonicalJson.FromObject(members);
                return CanonicalJson.IsCanonical(canonical);
            });

    private static string Nested(int depth) => new string('[', depth) + new string(']', depth);

    private sealed record Sample(string? Name, double Metres);
}

using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

/// <summary>
/// The six reference files of RFC 8785's public test data: lengths and hashes of the canonical outputs
/// come from there; the inputs are written anew with the same content in another order.
/// </summary>
public sealed class CanonicalJsonVectorTests
{
    public static TheoryData<string, string, int, string> Files =>
        new()
        {
            {
                "arrays",
                """[ 56, { "d": true, "10": null, "1": [ ] } ]""",
                32,
                "099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42"
            },
            {
                "french",
                """
                    { "sin": "ignore locale", "pêche": "but canonicalization MUST",
                      "péché": "is wrong according to French", "peach": "This sorting order" }
                    """,
                130,
                "d99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5"
            },
            {
                "structures",
                """
                    { "1": {"f": {"f": "hi", "F": 5}, "\n": 56.0}, "10": { }, "": "empty", "a": { },
                      "111": [ {"e": "yes", "E": "no"} ], "A": { } }
                    """,
                98,
                "605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5"
            },
            {
                "unicode",
                "{ \"Unnormalized Unicode\" : \"A\u030a\" }",
                30,
                "0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3"
            },
            {
                "values",
                """
                    { "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
                      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
                      "literals": [null, true, false] }
                    """,
                118,
                "2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb"
            },
            {
                "weird",
                """
                    { "\u20ac": "Euro Sign", "\r": "Carriage Return", "\u000a": "Newline", "1": "One",
                      "\u0080": "Control\u007f", "\ud83d\ude02": "Smiley",
                      "\u00f6": "Latin Small Letter O With Diaeresis",
                      "\ufb33": "Hebrew Letter Dalet With Dagesh", "</script>": "Browser Challenge" }
                    """,
                214,
                "6af595a9aa80110b964b4de3f82a05fa6ae7423005019bacfa2620dddc4e94d1"
            },
        };

    [Theory]
    [MemberData(nameof(Files))]
    public void FromText_ReferenceFile_HasThePublishedHash(
        string name,
        string input,
        int bytes,
        string sha256
    )
    {
        var canonical = CanonicalJson.FromText(input);

        Assert.True(bytes == canonical.Length, $"{name}: {Encoding.UTF8.GetString(canonical)}");
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(canonical)));
        Assert.True(CanonicalJson.IsCanonical(canonical));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void FromNode_ReferenceFile_HasThePublishedHash(
        string name,
        string input,
        int bytes,
        string sha256
    )
    {
        var canonical = CanonicalJson.FromNode(JsonNode.Parse(input));

        Assert.True(bytes == canonical.Length, name);
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(canonical)));
    }
}

using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using CsCheck;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class EcmaScriptNumberTests
{
    // RFC 8785 appendix B, and the number file of its public test data.
    [Theory]
    [InlineData(0x4340000000000001, "9007199254740994")]
    [InlineData(0x4340000000000002, "9007199254740996")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x8000000000000001, "-5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0xffefffffffffffff, "-1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0xc340000000000000, "-9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x44b52d02c7e14af7, "1.0000000000000001e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555554, "333333333.33333325")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    [InlineData(0x41b3de4355555556, "333333333.3333334")]
    [InlineData(0x41b3de4355555557, "333333333.33333343")]
    [InlineData(0xbecbf647612f3696, "-0.0000033333333333333333")]
    [InlineData(0x43143ff3c1cb0959, "1424953923781206.2")]
    public void Print_PublishedBits_GivesThePublishedText(ulong bits, string expected) =>
        Assert.Equal(expected, EcmaScriptNumber.Print(BitConverter.UInt64BitsToDouble(bits)));

    [Theory]
    [InlineData(0x7fffffffffffffff)]
    [InlineData(0x7ff0000000000000)]
    [InlineData(0xfff0000000000000)]
    public void Print_NotFinite_IsRefused(ulong bits) =>
        Assert.Throws<CanonicalJsonException>(() =>
            EcmaScriptNumber.Print(BitConverter.UInt64BitsToDouble(bits))
        );

    [Fact]
    public void Print_FirstThousandReferenceLines_HaveThePublishedHash()
    {
        var lines = ReferenceNumbers
            .First(1000)
            .Select(bits =>
                bits.ToString("x", CultureInfo.InvariantCulture)
                + ","
                + EcmaScriptNumber.Print(BitConverter.UInt64BitsToDouble(bits))
                + "\n"
            );

        var hash = SHA256.HashData(Encoding.ASCII.GetBytes(string.Concat(lines)));

        Assert.Equal(ReferenceNumbers.Sha256OfFirstThousand, Convert.ToHexStringLower(hash));
    }

    [Fact]
    public void Print_AnyFiniteDouble_ReadsBackAsTheSame() =>
        Gen
            .Double.Where(double.IsFinite)
            .Sample(value =>
            {
                var text = EcmaScriptNumber.Print(value);
                return double.Parse(text, CultureInfo.InvariantCulture) == value
                    && Encoding.ASCII.GetBytes(text) is var ascii
                    && EcmaScriptNumber.Normalise(ascii) == text;
            });

    [Theory]
    [InlineData("1.0", "1")]
    [InlineData("-0", "0")]
    [InlineData("-0.0", "0")]
    [InlineData("12.50", "12.5")]
    [InlineData("1E2", "100")]
    [InlineData("1000000000000000000000", "1e+21")]
    [InlineData("100000000000000000000", "100000000000000000000")]
    [InlineData("1e-400", "0")]
    public void Normalise_Literal_IsPrintedCanonically(string literal, string expected) =>
        Assert.Equal(expected, EcmaScriptNumber.Normalise(Encoding.ASCII.GetBytes(literal)));
}

using System.Net;
using System.Text.RegularExpressions;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Tests.Components.Figures;

/// <summary>Mathematics is set as it is written: the rules of precedence are those of arithmetic.</summary>
public sealed partial class FormulaMarkupTests
{
    [Theory]
    [InlineData("p/t", "<mfrac><mrow><mi>p</mi></mrow><mrow><mi>t</mi></mrow></mfrac>")]
    [InlineData(
        "a·b/(2c)",
        "<mfrac><mrow><mi>a</mi><mo>·</mo><mi>b</mi></mrow><mrow><mrow><mn>2</mn><mi>c</mi></mrow></mrow></mfrac>"
    )]
    [InlineData(
        "a + b/c",
        "<mi>a</mi><mo>+</mo><mfrac><mrow><mi>b</mi></mrow><mrow><mi>c</mi></mrow></mfrac>"
    )]
    [InlineData("√(x)", "<msqrt><mrow><mi>x</mi></mrow></msqrt>")]
    [InlineData("√3", "<msqrt><mn>3</mn></msqrt>")]
    [InlineData("x²", "<msup><mi>x</mi><mn>2</mn></msup>")]
    [InlineData(
        "x^(1/β)",
        "<msup><mi>x</mi><mrow><mrow><mfrac><mrow><mn>1</mn></mrow><mrow><mi>β</mi></mrow></mfrac></mrow></mrow></msup>"
    )]
    [InlineData("σ_h", "<msub><mi>σ</mi><mtext>h</mtext></msub>")]
    [InlineData("p2u", "<msub><mi>p</mi><mn>2u</mn></msub>")]
    [InlineData("E/4 266 920", "<mn>4 266 920</mn>")]
    public void Write_Formula_SetsItAsArithmeticReadsIt(string formula, string expected) =>
        Assert.Contains(
            expected,
            WebUtility.HtmlDecode(FormulaMarkup.Write(formula)),
            StringComparison.Ordinal
        );

    /// <summary>Formulas of the library: all are set as mathematics, and no sign of theirs is lost on the way.</summary>
    [Theory]
    [InlineData("Σ t^β·ln t/Σ t^β − 1/β − Σ_f ln t/r = 0; η = (Σ t^β/r)^(1/β)")]
    [InlineData("R(x | t) = exp((t/η)^β − ((t + x)/η)^β); m = η/β·exp((t/η)^β)·Γ(1/β, (t/η)^β)")]
    [InlineData("u0 = V/Δt·√(2·u_p² + 2·(p·u_T/T)²); threshold = 1.645·u0")]
    [InlineData("Φ = n²/(v·10⁴), n in rev/min, v in in/min; T = Tm·K·Φ^α in °C, K 0.65..0.75")]
    [InlineData("isentropic E = P·V/(k − 1)·(1 − (Pa/P)^((k−1)/k)); Brode (P − Pa)·V/(k − 1)")]
    [InlineData("power law max ∫ K·εⁿ/(exp(√3·ε) − 1) dε; each × weld factor")]
    [InlineData("k = t'(n − 1; C; z_p·√n)/√n")]
    [InlineData("G = max|x − mean|/s; critical (n − 1)/√n·√(t²/(n − 2 + t²))")]
    [InlineData("left = limit − Σ runs; passes = ⌊left / L⌋")]
    [InlineData("thin: Q/(2πkh)·exp(−vξ/(2a))·K0(vr/(2a)); finite: Σ of mirrored sources")]
    public void Write_FormulaOfTheLibrary_LosesNothing(string formula)
    {
        Assert.All(
            FormulaMarkup.Parts(formula),
            part =>
            {
                var markup = FormulaMarkup.Write(part);
                Assert.StartsWith("<math", markup, StringComparison.Ordinal);
                Assert.Equal(Bare(part), Bare(WebUtility.HtmlDecode(Tag().Replace(markup, ""))));
            }
        );
    }

    [Theory]
    [InlineData("a/(b")]
    [InlineData("a)b")]
    [InlineData("/a")]
    [InlineData("a^")]
    [InlineData("a/")]
    public void Write_WhatIsNoFormula_StaysText(string formula) =>
        Assert.Equal(formula, FormulaMarkup.Write(formula));

    [Fact]
    public void Write_Markup_IsEncoded() =>
        Assert.Equal("&lt;script&gt; (", FormulaMarkup.Write("<script> ("));

    // Letters, digits and signs; what a bar, a root, a power or a subscript says by its place is left out.
    private static string Bare(string text) =>
        Placed().Replace(text, "").Replace('²', '2').Replace('⁴', '4').Replace('ⁿ', 'n');

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"[\s()/^_√]")]
    private static partial Regex Placed();
}

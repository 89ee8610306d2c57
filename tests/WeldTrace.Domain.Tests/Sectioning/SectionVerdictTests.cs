using CsCheck;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Tests.Sectioning;

public sealed class SectionVerdictTests
{
    /// <summary>Whatever is measured: a larger size never gets a better verdict, and a wider uncertainty never makes a pass.</summary>
    [Fact]
    public void Verdict_IsMonotone_AndUncertaintyMakesNoPass()
    {
        Imperfection[] limited =
        [
            Imperfection.Underfill,
            Imperfection.Cavity,
            Imperfection.LinearMisalignment,
            Imperfection.ExcessPenetration,
            Imperfection.IncompletePenetration,
            Imperfection.Crack,
        ];
        var imperfections = Gen.Int[0, limited.Length - 1].Select(i => limited[i]);
        Gen.Select(
                imperfections,
                Gen.Int[1, 5000],
                Gen.Int[0, 2000],
                Gen.Int[0, 500],
                Gen.Int[0, 500],
                Gen.Int[1, 30]
            )
            .Sample(
                (imperfection, size, more, uncertainty, wider, thickness) =>
                {
                    var limit = ImperfectionJudgement.LimitFor(
                        SampleTests.Limits,
                        SectionWords.Of(imperfection),
                        Length.FromMillimetres(thickness),
                        null,
                        null
                    )!;
                    var small = Judge(limit, size, uncertainty);
                    var large = Judge(limit, size + more, uncertainty);
                    var wide = Judge(limit, size, uncertainty + wider);
                    return Rank(large) >= Rank(small)
                        && (wide != Verdict.Pass || small == Verdict.Pass);
                }
            );
    }

    private static Verdict Judge(AppliedLimit limit, int micrometres, int uncertainty) =>
        ImperfectionJudgement
            .Judge(Millimetres(micrometres), Millimetres(uncertainty), limit)
            .Verdict;

    private static Measured Millimetres(int micrometres) =>
        new(
            (micrometres / 1000m).ToString(
                "0.000",
                System.Globalization.CultureInfo.InvariantCulture
            ),
            "mm"
        );

    private static int Rank(Verdict verdict) =>
        verdict switch
        {
            Verdict.Pass => 0,
            Verdict.Undecided => 1,
            _ => 2,
        };
}

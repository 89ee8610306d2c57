using WeldTrace.Documents;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>A test that was taken back prints struck through.</summary>
internal static class Withdrawals
{
    public static Correction? Of(TestRecord test) =>
        test.Withdrawal is { } taken
            ? new Correction(taken.Reason, taken.PrintedName, taken.At, null)
            : null;
}

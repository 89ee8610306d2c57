using CsCheck;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>
/// Whatever people try, in whatever order: no run exists that a rule of the floor forbade. The rules are told here again from what
/// the random history did, without asking the gate.
/// </summary>
public sealed partial class ShopHistoryTests
{
    private enum Act
    {
        Start,
        StartSecond,
        StartByInspector,
        End,
        Interrupt,
        Log,
        LogWithExcursion,
        ShortLog,
        Sign,
        Report,
        UseAsIs,
        Rework,
        Repair,
        StartRepair,
        Scrap,
        Close,
        HoldTool,
        ServeTool,
        WithdrawProcedure,
        Revoke,
        Certify,
        Doubt,
        Clear,
        AskForWelder,
        AskForMachine,
        Grant,
        Decline,
    }

    /// <summary>What is tried, the acts of an ordinary day more often.</summary>
    private static readonly Act[] Often =
    [
        .. Enum.GetValues<Act>(),
        .. Enumerable
            .Repeat<Act[]>([Act.Start, Act.StartSecond, Act.End, Act.Log, Act.Sign], 8)
            .SelectMany(a => a),
        .. Enumerable.Repeat<Act[]>([Act.UseAsIs, Act.Rework, Act.Close], 3).SelectMany(a => a),
        .. Enumerable.Repeat<Act[]>([Act.Certify, Act.Clear], 3).SelectMany(a => a),
    ];

    /// <summary>Days on which certificates and the machine fail, and people ask for concessions.</summary>
    private static readonly Act[] OfWaivers =
    [
        Act.Start,
        Act.StartSecond,
        Act.End,
        Act.Log,
        Act.Sign,
        Act.Revoke,
        Act.Certify,
        Act.Doubt,
        Act.Clear,
        Act.AskForWelder,
        Act.AskForMachine,
        Act.Grant,
        Act.Decline,
    ];

    /// <summary>Days on which seams are found wanting, and repaired.</summary>
    private static readonly Act[] OfRepairs =
    [
        .. Enumerable
            .Repeat<Act[]>([Act.Report, Act.Repair, Act.StartRepair, Act.End, Act.Log, Act.Sign], 5)
            .SelectMany(a => a),
        .. Enumerable.Repeat<Act[]>([Act.Close, Act.Certify, Act.Clear], 2).SelectMany(a => a),
        Act.StartSecond,
        Act.Interrupt,
        Act.UseAsIs,
        Act.HoldTool,
        Act.ServeTool,
        Act.Revoke,
        Act.Doubt,
    ];

    // The histories do weld: a property over nothing would hold as well.
    [Fact]
    public void RandomHistories_HoldNoRunThatARuleForbade() =>
        Assert.InRange(Sample(Often, 3000).Started, 1500, int.MaxValue);

    [Fact]
    public void RandomHistoriesOfWaivers_HoldNoRunWithoutItsTwoSignatures() =>
        Assert.InRange(Sample(OfWaivers, 2000).Waived, 100, int.MaxValue);

    [Fact]
    public void RandomHistoriesOfRepairs_HoldNoRepairThatARuleForbade() =>
        Assert.InRange(Sample(OfRepairs, 3000, isWelded: true).Repaired, 300, int.MaxValue);

    private static (int Started, int Waived, int Repaired) Sample(
        Act[] from,
        int histories,
        bool isWelded = false
    )
    {
        var (started, waived, repaired) = (0, 0, 0);
        Gen.Int[0, from.Length - 1]
            .Select(i => from[i])
            .Array[5, 60]
            .Sample(
                acts =>
                {
                    var history = new History(isWelded);
                    foreach (var act in acts)
                    {
                        history.Try(act);
                    }

                    started += history.Started;
                    waived += history.Waived;
                    repaired += history.Repaired;
                },
                iter: histories,
                threads: 1
            );
        return (started, waived, repaired);
    }
}

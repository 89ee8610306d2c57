using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Tests.Access;
using WeldTrace.Web.Tests.Ledger;

namespace WeldTrace.Web.Tests.Features.Trace;

/// <summary>The next step that the database works out for lists is the one that the vessel itself names.</summary>
[Collection(typeof(SecondDemoSiteGroup))]
public sealed class TracedVesselTests(DemoSite site)
{
    public static TheoryData<StepState> States => [.. Enum.GetValues<StepState>()];

    [Theory]
    [MemberData(nameof(States))]
    public async Task NextStep_IsTheVesselsOwn_WhateverTheStateOfItsFirstSteps(StepState state)
    {
        await using var forger = await Forger.OpenAsync(site);
        await forger.KeepAsync("vessels");
        var word = JsonNamingPolicy.CamelCase.ConvertName(state.ToString());
        await forger.RunAsync(
            $$"""UPDATE vessels SET steps = jsonb_set(jsonb_set(steps, '{0,state}', '"{{word}}"'), '{1,state}', '"{{word}}"')"""
        );

        var (listed, vessels) = await site.ReadAsync(async db =>
            (
                await db.Vessels.OrderBy(v => v.Serial).AsTraced().ToListAsync(),
                await db.Vessels.AsNoTracking().OrderBy(v => v.Serial).ToListAsync()
            )
        );

        Assert.All(vessels, v => Assert.Equal(state, v.Steps[0].State));
        Assert.Equal(
            vessels.Select(v =>
                v.NextStep is { } next
                    ? FormattableString.Invariant($"{next.Sequence} {next.Title}")
                    : null
            ),
            listed.Select(v => v.NextStep)
        );
    }
}

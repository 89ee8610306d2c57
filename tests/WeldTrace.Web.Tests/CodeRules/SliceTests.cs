using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>A change of one use case touches one folder: DEVELOPERS.md, "Add a slice".</summary>
public sealed class SliceTests
{
    private const string Features = "WeldTrace.Web.Features.";

    private static readonly Type[] OwnTypes =
    [
        .. typeof(Routes)
            .Assembly.GetTypes()
            .Where(t =>
                t.Namespace?.StartsWith("WeldTrace.Web", StringComparison.Ordinal) is true
                && !t.IsNested
            ),
    ];

    [Fact]
    public void Slice_UsesNoOtherSlice() =>
        SourceTree.AssertNone(
            Slices.SelectMany(t =>
                UsedTypes
                    .Of(t)
                    .Where(u => IsForeign(u, t))
                    .Select(u => $"{t.FullName} uses {u.FullName}")
            ),
            "Take what two slices use to their area's folder, to Components, Reading or the domain:"
        );

    [Fact]
    public void WhatSlicesShare_UsesNoSlice() =>
        SourceTree.AssertNone(
            OwnTypes
                .Where(t =>
                    !IsFeature(t)
                    && !IsRegistration(t)
                    && t != typeof(Program)
                    && t.Name is not ("AppRouter" or "App")
                )
                .Where(t =>
                    !t.Namespace!.StartsWith("WeldTrace.Web.Demo", StringComparison.Ordinal)
                )
                .SelectMany(t =>
                    UsedTypes
                        .Of(t)
                        .Where(u => IsFeature(u) && !IsRegistration(u))
                        .Select(u => $"{t.FullName} uses {u.FullName}")
                ),
            "Shared code knows no slice:"
        );

    [Fact]
    public void Components_HoldNoDatabase() =>
        SourceTree.AssertNone(
            OwnTypes
                .Where(t => t.IsAssignableTo(typeof(IComponent)))
                .Where(t => UsedTypes.Of(t).Any(IsDatabase))
                .Select(t => t.FullName!),
            "A component asks a handler or a reader; these hold the database themselves:"
        );

    /// <summary>What reads or writes the database in a slice says so in its name, so that one finds it.</summary>
    [Fact]
    public void DatabaseIsUsed_ByHandlersReadersAndEndpoints() =>
        SourceTree.AssertNone(
            Slices
                .Where(t => UsedTypes.Of(t).Any(IsFactory))
                .Where(t => !Askers.Any(a => t.Name.EndsWith(a, StringComparison.Ordinal)))
                .Select(t => t.FullName!),
            $"Only what is named {string.Join(", ", Askers)} opens the database:"
        );

    /// <summary>The instructions are really read: a handler is seen to use the database.</summary>
    [Fact]
    public void Uses_AreFound()
    {
        var used = UsedTypes.Of(typeof(WeldTrace.Web.Features.Vessels.Ship.ShipVesselHandler));

        Assert.Contains(typeof(WeldTrace.Domain.Vessels.Vessel), used);
        Assert.Contains(typeof(WeldTrace.Domain.Records.Signature), used);
    }

    private static readonly string[] Askers = ["Handler", "Reader", "Endpoint", "Desk"];

    private static IEnumerable<Type> Slices =>
        OwnTypes.Where(t => IsFeature(t) && !IsRegistration(t));

    private static bool IsFeature(Type type) =>
        type.Namespace?.StartsWith(Features, StringComparison.Ordinal) is true;

    private static bool IsRegistration(Type type) =>
        type.Name.EndsWith("Registration", StringComparison.Ordinal);

    private static bool IsFactory(Type type) => type == typeof(IDbContextFactory<>);

    private static bool IsDatabase(Type type) =>
        IsFactory(type) || type.IsAssignableTo(typeof(DbContext));

    /// <summary>Folders with an address: those are slices; a folder without one is a part of its area.</summary>
    private static readonly HashSet<string> Addressed =
    [
        .. OwnTypes
            .Where(t =>
                IsFeature(t)
                && (
                    t.IsDefined(typeof(RouteAttribute), false)
                    || t.Name.EndsWith("Endpoint", StringComparison.Ordinal)
                )
            )
            .Select(t => t.Namespace!),
    ];

    // A slice may use its own folder, and what its area shares.
    private static bool IsForeign(Type used, Type user) =>
        IsFeature(used)
        && used.Namespace != user.Namespace
        && (
            Area(used) != Area(user)
            || (Addressed.Contains(used.Namespace!) && IsBelowItsArea(used))
        );

    private static string Area(Type type) => type.Namespace![Features.Length..].Split('.')[0];

    private static bool IsBelowItsArea(Type type) =>
        type.Namespace![Features.Length..].Contains('.', StringComparison.Ordinal);
}

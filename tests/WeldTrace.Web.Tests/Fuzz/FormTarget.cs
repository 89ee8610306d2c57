using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Features.Procedures.Write;

namespace WeldTrace.Web.Tests.Fuzz;

/// <summary>A method that a posted form is given to: one of the form itself that reads what was typed, or a handler's.</summary>
internal sealed class FormTarget(MethodInfo method)
{
    private const int LongestSentence = 1_500;

    private static readonly Assembly Program = typeof(WeldTrace.Web.Routes).Assembly;

    public string Name => $"{method.DeclaringType!.Name}.{method.Name}";

    // Records that reading looks at, besides what was typed.
    private static Dictionary<Type, object> Known { get; } =
        new object[]
        {
            SampleDesigns.Content(),
            SampleDesigns.Content().Pressures.Stages[0],
            SampleDesigns.Content().Joints[0],
            new SampleShop().Vessel.Steps[0],
            SampleMaterial.Minima(),
            NamedByDetails.None,
        }.ToDictionary(known => known.GetType());

    /// <summary>All forms that a page takes.</summary>
    public static IReadOnlySet<Type> Forms { get; } =
        Program
            .GetTypes()
            .SelectMany(t =>
                t.GetProperties(
                    BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic
                )
            )
            .Where(p => p.GetCustomAttribute<SupplyParameterFromFormAttribute>() is not null)
            .Select(p => p.PropertyType)
            .ToHashSet();

    /// <summary>Whatever reads a form or takes one.</summary>
    public static IReadOnlyList<FormTarget> All { get; } =
    [
        .. Program
            .GetTypes()
            .Where(t => t is { IsClass: true, ContainsGenericParameters: false })
            .SelectMany(t =>
                t.GetMethods(
                    BindingFlags.Instance
                        | BindingFlags.Static
                        | BindingFlags.Public
                        | BindingFlags.DeclaredOnly
                )
            )
            .Where(m => Reads(m) || Handles(m))
            .Where(m => m.GetParameters().All(CanBeGiven))
            .Select(m => new FormTarget(m)),
    ];

    // A form, or a row of one, that reads what was typed.
    private static bool Reads(MethodInfo method) =>
        !method.IsStatic
        && method.Name.StartsWith("Read", StringComparison.Ordinal)
        && method.GetParameters().Any(p => p.ParameterType == typeof(Entries) || IsRefusals(p));

    private static bool Handles(MethodInfo method) =>
        !method.IsSpecialName
        && !typeof(ComponentBase).IsAssignableFrom(method.DeclaringType)
        && !method.Name.StartsWith('<')
        && method.GetParameters().Any(p => Forms.Contains(p.ParameterType));

    private static bool IsRefusals(ParameterInfo parameter) =>
        parameter.ParameterType == typeof(List<Refusal>);

    /// <summary>Gives it a hostile form.</summary>
    /// <returns>What it did wrong; null when it read the form, told what is wrong, or asked for the database.</returns>
    public async Task<string?> TryAsync(IServiceProvider services, Random random)
    {
        FilledForm fill = new(random);
        List<Refusal> refusals = [];
        Entries entries = new();
        var arguments = method
            .GetParameters()
            .Select(p =>
                p.ParameterType == typeof(Entries) ? entries
                : IsRefusals(p) ? refusals
                : p.ParameterType == typeof(Actor) ? Everybody
                : p.ParameterType == typeof(CancellationToken) ? CancellationToken.None
                : Forms.Contains(p.ParameterType) ? fill.Make(p.ParameterType)!
                : Known.GetValueOrDefault(p.ParameterType) ?? fill.Make(p.ParameterType)
            )
            .ToArray();
        try
        {
            var target =
                method.IsStatic ? null
                : Forms.Contains(method.DeclaringType!)
                || method.DeclaringType!.GetConstructor([]) is not null
                    ? fill.Make(method.DeclaringType!)
                : ActivatorUtilities.CreateInstance(services, method.DeclaringType!);
            var result = await WaitAsync(method.Invoke(target, arguments));
            return Fault(result, [.. entries.Refusals, .. refusals]);
        }
        catch (Exception failure) when (Asked(failure))
        {
            return null;
        }
        catch (Exception failure)
        {
            return $"{Name} threw {(failure as TargetInvocationException)?.InnerException ?? failure}";
        }
    }

    private static Actor Everybody { get; } =
        SamplePeople.Engineer with
        {
            Roles = Enum.GetValues<Role>(),
        };

    private static async Task<object?> WaitAsync(object? returned)
    {
        if (returned is not Task task)
        {
            return returned;
        }

        await task;
        return task.GetType().GetProperty("Result")?.GetValue(task);
    }

    private static bool Asked(Exception failure) =>
        failure is NoDatabaseException || (failure.InnerException is { } inner && Asked(inner));

    private string? Fault(object? result, IReadOnlyList<Refusal> told)
    {
        var refused = RefusalsOf(result);
        if (refused is { Count: 0 } && !IsAccepted(result!))
        {
            return $"{Name} refused without a reason";
        }

        IReadOnlyList<Refusal> all = [.. told, .. refused ?? []];
        if (all.FirstOrDefault(IsUnclear) is { } unclear)
        {
            return $"{Name} told a reason of {unclear.Sentence.Length} characters at {unclear.Field}";
        }

        // What was read without a fault is written down as records are: it must have a JSON form.
        if (all.Count == 0 && result is not null && IsOfTheDomain(result) && refused is null)
        {
            JsonSerializer.SerializeToUtf8Bytes(result, result.GetType(), DomainJson.Options);
        }

        return null;
    }

    private static bool IsUnclear(Refusal told) =>
        string.IsNullOrWhiteSpace(told.Sentence) || told.Sentence.Length > LongestSentence;

    // Outcomes of every kind have these two.
    private static IReadOnlyList<Refusal>? RefusalsOf(object? result) =>
        result?.GetType().GetProperty("Refusals")?.GetValue(result) as IReadOnlyList<Refusal>;

    private static bool IsAccepted(object result) =>
        result.GetType().GetProperty("IsAccepted")?.GetValue(result) is not false;

    private static bool IsOfTheDomain(object result) =>
        result.GetType().Assembly == typeof(Refusal).Assembly;

    // What reading needs of the database can't be made up here, and its handler is tried by the site's own forms.
    private static bool CanBeGiven(ParameterInfo parameter) =>
        parameter.ParameterType == typeof(Entries)
        || IsRefusals(parameter)
        || parameter.ParameterType == typeof(Actor)
        || parameter.ParameterType == typeof(CancellationToken)
        || Known.ContainsKey(parameter.ParameterType)
        || FilledForm.CanMake(parameter.ParameterType)
        || new NullabilityInfoContext().Create(parameter).ReadState == NullabilityState.Nullable;
}

/// <summary>Says that somebody got as far as to ask for the database, which is not there.</summary>
internal sealed class NoDatabaseException : Exception;

internal sealed class NoDatabase : IDbContextFactory<WeldTraceDbContext>
{
    public WeldTraceDbContext CreateDbContext() => throw new NoDatabaseException();
}

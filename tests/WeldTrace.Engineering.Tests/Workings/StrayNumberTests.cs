using System.Reflection;

namespace WeldTrace.Engineering.Tests.Workings;

/// <summary>
/// Neither NaN nor infinity leaves the library: every public static method, and every method of what it returns, is called with
/// hostile numbers. It refuses, throws for a wrong argument, or gives finite numbers only.
/// </summary>
public sealed class StrayNumberTests
{
    private const int Calls = 300;

    private static readonly Type[] Types =
    [
        .. typeof(Working)
            .Assembly.GetExportedTypes()
            .Where(type => !type.IsEnum && !type.IsGenericTypeDefinition),
    ];

    public static TheoryData<string> Methods =>
        [
            .. Types
                .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static))
                .Where(CanBeCalled)
                .Select(NameOf)
                .Distinct()
                .Order(),
        ];

    [Fact]
    public void Methods_OfTheLibrary_AreFound() => Assert.InRange(Methods.Count, 150, 1000);

    [Theory]
    [MemberData(nameof(Methods))]
    public void Call_HostileNumbers_GivesFiniteNumbersOnly(string name)
    {
        var methods = Types
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static))
            .Where(method => CanBeCalled(method) && NameOf(method) == name);
        foreach (var method in methods)
        {
            for (var seed = 0; seed < Calls; seed++)
            {
                var hostile = new HostileCalls(seed);
                if (
                    hostile.Arguments(method) is { } arguments
                    && Result(method, null, arguments) is { } result
                )
                {
                    AssertFinite(result, name, seed);
                    CallMethods(hostile, result, name, seed);
                }
            }
        }
    }

    private static void CallMethods(HostileCalls hostile, object result, string name, int seed)
    {
        var target = result.GetType().GetProperty("IsRefused")?.GetValue(result) is false
            ? result.GetType().GetProperty("Value")!.GetValue(result)!
            : result;
        foreach (
            var method in target
                .GetType()
                .GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                .Where(method =>
                    CanBeCalled(method)
                    && method.DeclaringType!.Assembly == typeof(Working).Assembly
                )
        )
        {
            if (
                hostile.Arguments(method) is { } arguments
                && Result(method, target, arguments) is { } inner
            )
            {
                AssertFinite(inner, $"{name} → {NameOf(method)}", seed);
            }
        }
    }

    private static object? Result(MethodInfo method, object? target, object?[] arguments)
    {
        try
        {
            return method.Invoke(target, arguments);
        }
        catch (TargetInvocationException caught)
            when (caught.InnerException
                    is ArgumentException
                        or InvalidOperationException
                        or FormatException
            )
        {
            return null;
        }
        catch (TargetInvocationException caught)
        {
            Assert.Fail($"{NameOf(method)}({Show(arguments)}) threw {caught.InnerException}");
            return null;
        }
    }

    private static void AssertFinite(object result, string name, int seed) =>
        Assert.True(
            !HostileCalls.Stray(result).Any(),
            $"{name}, seed {seed}: {string.Join(", ", HostileCalls.Stray(result).Take(5))}"
        );

    private static bool CanBeCalled(MethodInfo method) =>
        !method.IsSpecialName
        && !method.ContainsGenericParameters
        && method.ReturnType != typeof(void)
        && method.ReturnType != typeof(string)
        && method.Name is not ("Deconstruct" or "Equals" or "GetHashCode" or "<Clone>$");

    private static string NameOf(MethodInfo method) =>
        $"{method.DeclaringType!.Name}.{method.Name}";

    private static string Show(object?[] arguments) => string.Join(", ", arguments);
}

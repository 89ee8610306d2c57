using System.Reflection;
using System.Runtime.CompilerServices;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Workings;

/// <summary>Makes arguments for any public member of the library out of hostile numbers, and looks for stray numbers in what comes back.</summary>
internal sealed class HostileCalls(int seed)
{
    private const int DeepestRecord = 3;
    private const double Largest = 1e290;

    private static readonly double[] Numbers =
    [
        double.NaN,
        double.PositiveInfinity,
        double.NegativeInfinity,
        double.MaxValue,
        -1e300,
        -1,
        0,
        double.Epsilon,
        1e-300,
        1e-9,
        0.001,
        0.01,
        0.05,
        0.1,
        0.5,
        0.9,
        0.99,
        1,
        2,
        3,
        10,
        100,
        300,
        1e5,
        1e7,
        1e12,
        1e29,
        1e300,
    ];

    private static readonly int[] Counts = [int.MinValue, -1, 0, 1, 2, 3, 5, 20, 10_000];

    private readonly Random _random = new(seed);

    /// <summary>Arguments for a method or constructor; null when it takes something that cannot be made of numbers.</summary>
    public object?[]? Arguments(MethodBase method, int depth = 0)
    {
        var parameters = method.GetParameters();
        var arguments = new object?[parameters.Length];
        for (var i = 0; i < parameters.Length; i++)
        {
            if (
                parameters[i].ParameterType.IsByRef
                || !TryMake(parameters[i].ParameterType, depth, out arguments[i])
            )
            {
                return null;
            }
        }

        return arguments;
    }

    /// <summary>Names of the public properties below a result that hold a number which is none.</summary>
    public static IEnumerable<string> Stray(object? value, string path = "result", int depth = 0)
    {
        if (value is double number)
        {
            return double.IsFinite(number) ? [] : [path];
        }

        if (value is null or string || value.GetType().IsEnum || depth > 4)
        {
            return [];
        }

        if (value is System.Collections.IEnumerable items)
        {
            return items
                .Cast<object?>()
                .Take(50)
                .SelectMany((item, i) => Stray(item, $"{path}[{i}]", depth + 1));
        }

        return value.GetType().Assembly == typeof(Working).Assembly || IsTuple(value.GetType())
            ? Members(value).SelectMany(m => Stray(m.Value, $"{path}.{m.Name}", depth + 1))
            : [];
    }

    private static bool IsTuple(Type type) =>
        type.IsGenericType
        && type.FullName!.StartsWith("System.ValueTuple", StringComparison.Ordinal);

    private static IEnumerable<(string Name, object? Value)> Members(object value)
    {
        var isRefused = value.GetType().GetProperty("IsRefused")?.GetValue(value) is true;
        var properties = value
            .GetType()
            .GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0)
            .Where(p => !isRefused || p.Name is not ("Value" or "Working"))
            .Select(p => (p.Name, p.GetValue(value)));
        var fields = value
            .GetType()
            .GetFields(BindingFlags.Public | BindingFlags.Instance)
            .Select(f => (f.Name, f.GetValue(value)));
        return properties.Concat(fields);
    }

    private bool TryMake(Type type, int depth, out object? value)
    {
        value =
            type == typeof(double) ? Pick(Numbers)
            : type == typeof(double?) ? (_random.Next(3) == 0 ? null : Pick(Numbers))
            : type == typeof(int) ? Pick(Counts)
            : type == typeof(bool) ? _random.Next(2) == 0
            : type == typeof(string) ? "text"
            : type == typeof(TimeSpan) ? TimeSpan.FromSeconds(Seconds())
            : type.IsEnum ? Pick(Enum.GetValues(type).Cast<object>().ToArray())
            : IsQuantity(type) ? Quantity(type)
            : null;
        return value is not null
            || type == typeof(double?)
            || TryMakeList(type, depth, out value)
            || TryMakeRecord(type, depth, out value);
    }

    private bool TryMakeList(Type type, int depth, out object? value)
    {
        value = null;
        var isList =
            type.IsGenericType
            && type.GetGenericTypeDefinition() is { } kind
            && (kind == typeof(IReadOnlyList<>) || kind == typeof(IEnumerable<>));
        if (!isList)
        {
            return false;
        }

        var items = Array.CreateInstance(type.GetGenericArguments()[0], _random.Next(8));
        for (var i = 0; i < items.Length; i++)
        {
            if (!TryMake(type.GetGenericArguments()[0], depth + 1, out var item))
            {
                return false;
            }

            items.SetValue(item, i);
        }

        value = items;
        return true;
    }

    private bool TryMakeRecord(Type type, int depth, out object? value)
    {
        value = null;
        if (
            depth > DeepestRecord
            || type.Assembly != typeof(Working).Assembly
            || type.IsAbstract
            || type.IsDefined(typeof(RequiredMemberAttribute))
        )
        {
            return false;
        }

        var constructor = type.GetConstructors().MaxBy(c => c.GetParameters().Length);
        if (constructor is null || Arguments(constructor, depth + 1) is not { } arguments)
        {
            return false;
        }

        try
        {
            value = constructor.Invoke(arguments);
            return true;
        }
        catch (TargetInvocationException caught) when (caught.InnerException is ArgumentException)
        {
            return false;
        }
    }

    private static bool IsQuantity(Type type) =>
        type.GetInterfaces()
            .Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IQuantity<>));

    /// <summary>A quantity refuses what is no number when it is made, so those become plain ones here.</summary>
    private object Quantity(Type type)
    {
        var number = Pick(Numbers);
        var finite = Math.Abs(number) <= Largest ? number : 0.02;
        return type.GetMethod("FromSi")!
            .Invoke(null, [type == typeof(Temperature) ? Math.Abs(finite) : finite])!;
    }

    private double Seconds()
    {
        var number = Pick(Numbers);
        return double.IsFinite(number) ? Math.Clamp(number, -1e9, 1e9) : 60;
    }

    private T Pick<T>(T[] values) => values[_random.Next(values.Length)];
}

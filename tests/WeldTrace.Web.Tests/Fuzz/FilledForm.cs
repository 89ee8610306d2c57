using System.Collections;
using System.Reflection;
using Microsoft.AspNetCore.Http;

namespace WeldTrace.Web.Tests.Fuzz;

/// <summary>Fills a form as the server would from a hostile request: texts of any kind, rows left out or by the hundred, files that are none.</summary>
internal sealed class FilledForm(Random random)
{
    private const int Deepest = 6;
    private const int ManyRows = 300;
    private int _depth;

    /// <summary>Whether there is something to fill in.</summary>
    public static bool CanMake(Type type) =>
        Nullable.GetUnderlyingType(type) is { } plain ? CanMake(plain)
        : ElementOf(type) is { } element ? CanMake(element)
        : type.IsPrimitive
            || type.IsEnum
            || type == typeof(string)
            || type == typeof(decimal)
            || type == typeof(Guid)
            || type == typeof(DateOnly)
            || type == typeof(IFormFile)
            || (
                type.Assembly == typeof(Program).Assembly
                && type.GetConstructors()
                    .Any(c => c.GetParameters().All(p => CanMake(p.ParameterType)))
            );

    /// <summary>A value of a type; null when none can be made.</summary>
    public object? Make(Type type)
    {
        var plain = Nullable.GetUnderlyingType(type);
        if (plain is not null)
        {
            return random.Next(3) == 0 ? null : Make(plain);
        }

        return type switch
        {
            _ when type == typeof(string) => HostileText.Any(random),
            _ when type == typeof(bool) => random.Next(2) == 0,
            _ when type == typeof(int) => Pick(0, 1, -1, 20, int.MaxValue, int.MinValue),
            _ when type == typeof(long) => Pick(0L, 1L, -1L, long.MaxValue, long.MinValue),
            _ when type == typeof(double) => Pick(0d, 1d, -1d, double.NaN, double.MaxValue),
            _ when type == typeof(decimal) => Pick(0m, 1m, -1m, decimal.MaxValue, decimal.MinValue),
            _ when type == typeof(Guid) => random.Next(2) == 0 ? Guid.Empty : Random(),
            _ when type == typeof(DateOnly) => Pick(
                DateOnly.MinValue,
                DateOnly.MaxValue,
                new DateOnly(2026, 1, 15)
            ),
            _ when type == typeof(IFormFile) => random.Next(3) == 0 ? File() : null,
            { IsEnum: true } => Enum.GetValues(type)
                .GetValue(random.Next(Enum.GetValues(type).Length)),
            _ => MakeWhole(type),
        };
    }

    private object? MakeWhole(Type type)
    {
        if (_depth > Deepest)
        {
            return null;
        }

        _depth++;
        try
        {
            return ElementOf(type) is { } element ? Rows(type, element)
                : type.Assembly == typeof(Program).Assembly ? Whole(type)
                : null;
        }
        finally
        {
            _depth--;
        }
    }

    private object? Whole(Type type)
    {
        var made = type.GetConstructors().MinBy(c => c.GetParameters().Length);
        if (made is null)
        {
            return null;
        }

        var whole = made.Invoke([.. made.GetParameters().Select(p => Make(p.ParameterType))]);
        foreach (var property in type.GetProperties().Where(IsPosted))
        {
            // What a request leaves out stays as the form has it.
            if (random.Next(8) > 0)
            {
                property.SetValue(whole, Make(property.PropertyType));
            }
        }

        return whole;
    }

    private static bool IsPosted(PropertyInfo property) =>
        property.SetMethod is { IsPublic: true } && property.GetIndexParameters().Length == 0;

    private object? Rows(Type type, Type element)
    {
        var count = random.Next(60) == 0 ? ManyRows : random.Next(5);
        if (random.Next(10) == 0)
        {
            return null;
        }

        var rows = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(element))!;
        for (var i = 0; i < count; i++)
        {
            if (Make(element) is { } row)
            {
                rows.Add(row);
            }
        }

        if (!type.IsArray)
        {
            return rows;
        }

        var array = Array.CreateInstance(element, rows.Count);
        rows.CopyTo(array, 0);
        return array;
    }

    private static Type? ElementOf(Type type) =>
        type.IsArray ? type.GetElementType()
        : type.IsGenericType
        && type.IsAssignableFrom(typeof(List<>).MakeGenericType(type.GetGenericArguments()[0]))
            ? type.GetGenericArguments()[0]
        : null;

    private FormFile File()
    {
        var bytes = new byte[random.Next(200)];
        random.NextBytes(bytes);
        return new(new MemoryStream(bytes), 0, bytes.Length, "File", HostileText.Any(random) ?? "");
    }

    private Guid Random()
    {
        var bytes = new byte[16];
        random.NextBytes(bytes);
        return new Guid(bytes);
    }

    private T Pick<T>(params ReadOnlySpan<T> values) => values[random.Next(values.Length)];
}

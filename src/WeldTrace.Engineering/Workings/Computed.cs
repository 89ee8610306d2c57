using System.Diagnostics.CodeAnalysis;

namespace WeldTrace.Engineering;

/// <summary>Either a result with its working, or all the reasons why there is none.</summary>
/// <typeparam name="T">Type of the result.</typeparam>
public sealed class Computed<T> : IWorked
    where T : notnull
{
    private readonly T? _value;
    private readonly Working? _working;

    internal Computed(T value, Working working)
    {
        (_value, _working) = (value, working);
        Refusals = [];
    }

    internal Computed(IReadOnlyList<Refusal> refusals) =>
        Refusals =
            refusals.Count > 0
                ? refusals
                : throw new ArgumentException("A refusal needs a reason.", nameof(refusals));

    /// <summary>True when there is no result.</summary>
    public bool IsRefused => Refusals.Count > 0;

    /// <summary>All reasons; empty when there is a result.</summary>
    public IReadOnlyList<Refusal> Refusals { get; }

    /// <summary>The result.</summary>
    /// <exception cref="InvalidOperationException">The computation was refused.</exception>
    public T Value => IsRefused ? throw NoResult() : _value!;

    /// <summary>The working of the result.</summary>
    /// <exception cref="InvalidOperationException">The computation was refused.</exception>
    public Working Working => IsRefused ? throw NoResult() : _working!;

    /// <summary>Gives the result when there is one.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T value)
    {
        value = _value;
        return !IsRefused;
    }

    private InvalidOperationException NoResult() =>
        new("Refused: " + string.Join(" ", Refusals.Select(r => $"{r.Where}: {r.What}")));
}

/// <summary>Makes <see cref="Computed{T}"/> values.</summary>
public static class Computed
{
    /// <summary>A result that carries its own working.</summary>
    public static Computed<T> Of<T>(T value)
        where T : IWorked => new(value, value.Working);

    /// <summary>A plain result with its working.</summary>
    public static Computed<T> Of<T>(T value, Working working)
        where T : notnull => new(value, working);

    /// <summary>No result, for these reasons; at least one.</summary>
    /// <exception cref="ArgumentException">No reason is given.</exception>
    public static Computed<T> Refused<T>(params IReadOnlyList<Refusal> refusals)
        where T : notnull => new(refusals);
}

namespace WeldTrace.Domain.People;

/// <summary>
/// The short secret by which a person takes over a shared tablet. It is worth something on that tablet only, signs no record, and is
/// erased after a few wrong ones, so that six digits are enough (NIST SP 800-63B-4 3.1.1.2, activation secrets).
/// </summary>
public static class PinRules
{
    /// <summary>Fewest digits.</summary>
    public const int Shortest = 6;

    /// <summary>Most digits; any password is longer.</summary>
    public const int Longest = 12;

    /// <summary>After so many wrong ones in a row the PIN is erased.</summary>
    public const int MostWrong = 5;

    private const int FewestDifferentDigits = 3;

    /// <summary>Whether what was typed has the form of a PIN and not of a password.</summary>
    /// <param name="typed">What was typed.</param>
    public static bool HasForm(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return typed.Length is >= Shortest and <= Longest && typed.All(char.IsAsciiDigit);
    }

    /// <summary>What is wrong with a new PIN; null when nothing is.</summary>
    /// <param name="pin">PIN.</param>
    public static string? FaultOf(string pin) =>
        !HasForm(pin) ? $"Give {Shortest} to {Longest} digits."
        : pin.Distinct().Count() < FewestDifferentDigits || IsRow(pin)
            ? "The PIN is guessed at once; take digits that are no row and not all the same."
        : null;

    private static bool IsRow(string pin)
    {
        var steps = pin.Zip(pin.Skip(1), (a, b) => b - a).Distinct().ToList();
        return steps is [1 or -1];
    }
}

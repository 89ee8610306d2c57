namespace WeldTrace.Domain.Procedures;

/// <summary>Revision letters: 1 is A, 26 is Z, 27 is AA (drawing-office practice; common practice, no source).</summary>
public static class RevisionLetters
{
    /// <summary>The letters of an index.</summary>
    /// <param name="index">1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The index is below 1.</exception>
    public static string Of(int index)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(index, 1);
        var letters = "";
        for (var rest = index; rest > 0; rest = (rest - 1) / 26)
        {
            letters = (char)('A' + ((rest - 1) % 26)) + letters;
        }

        return letters;
    }
}

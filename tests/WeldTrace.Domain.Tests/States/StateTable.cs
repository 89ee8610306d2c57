using Xunit;

namespace WeldTrace.Domain.Tests.States;

/// <summary>
/// A table of every state and every act, written as text: the first line names the acts, each further line a state and what becomes
/// of it by each act. A word is the state that follows; <c>=word</c> says that nothing
/// changes, <c>!code</c> is the refusal.
/// </summary>
internal static class StateTable
{
    private static readonly char[] Spaces = [' ', '\t'];

    /// <summary>One row of test data for each cell; every state of the enumeration must have a line.</summary>
    public static TheoryData<TState, string, string> Read<TState>(
        string table,
        params IReadOnlyList<TState> unreachable
    )
        where TState : struct, Enum
    {
        var lines = table
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(line => line.Split(Spaces, StringSplitOptions.RemoveEmptyEntries))
            .ToList();
        var acts = lines[0];
        var data = new TheoryData<TState, string, string>();
        foreach (var line in lines.Skip(1))
        {
            Assert.Equal(acts.Length + 1, line.Length);
            foreach (var (act, expected) in acts.Zip(line.Skip(1)))
            {
                data.Add(Enum.Parse<TState>(line[0]), act, expected);
            }
        }

        Assert.Equal(
            Enum.GetValues<TState>().Except(unreachable),
            lines.Skip(1).Select(l => Enum.Parse<TState>(l[0])).Order()
        );
        return data;
    }
}

using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>A form that changes something.</summary>
/// <param name="Name">File it stands in, and its name there.</param>
/// <param name="May">Sign-in names of the roles that may send it; the first sends it for good.</param>
/// <param name="At">Where it is shown, as the records now stand.</param>
/// <param name="Fields">What is typed into it (<see cref="SentForm"/>); the rest is sent as it is shown.</param>
internal sealed record FormRow(
    string Name,
    string May,
    Func<DemoSite, Task<string>> At,
    params IReadOnlyList<(string Field, string Value)> Fields
)
{
    public FormRow(
        string name,
        string may,
        string at,
        params IReadOnlyList<(string Field, string Value)> fields
    )
        : this(name, may, _ => Task.FromResult(at), fields) { }

    /// <summary>The name that is sent with it.</summary>
    public string Handler => Name[(Name.IndexOf(' ', StringComparison.Ordinal) + 1)..];

    public IReadOnlyList<string> Allowed => May.Split(' ');

    /// <summary>A form whose place is found among the records.</summary>
    public static FormRow Of(
        string name,
        string may,
        Func<WeldTraceDbContext, Task<string>> at,
        params IReadOnlyList<(string Field, string Value)> fields
    ) => new(name, may, site => site.ReadAsync(at), fields);
}

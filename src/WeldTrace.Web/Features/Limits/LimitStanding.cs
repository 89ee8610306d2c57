using WeldTrace.Domain.Limits;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Limits;

/// <summary>How an edition of a table stands, as a word with a shape.</summary>
public sealed record LimitStanding(Mark Mark, string Word)
{
    public static LimitStanding Of(LimitTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table switch
        {
            { SupersededById: not null } => new(Mark.Ended, "superseded"),
            { IsChecked: true } => new(Mark.Passed, "checked against own copy"),
            _ => new(Mark.Warning, "unchecked"),
        };
    }
}

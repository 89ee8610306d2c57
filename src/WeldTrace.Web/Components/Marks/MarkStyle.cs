namespace WeldTrace.Web.Components.Marks;

/// <summary>Style-sheet class of a mark: ink for what is settled, alarm for what stops work, accent for what comes next.</summary>
public static class MarkStyle
{
    /// <summary>The class of the element that holds the shape and its word.</summary>
    public static string For(Mark mark) =>
        mark switch
        {
            Mark.Ready or Mark.InProgress => "mark-now",
            Mark.Failed or Mark.Held or Mark.Warning or Mark.Undecided => "mark-alarm",
            Mark.Waiting or Mark.Draft or Mark.Ended => "mark-quiet",
            _ => "mark-settled",
        };
}

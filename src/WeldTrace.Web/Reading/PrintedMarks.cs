using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Reading;

/// <summary>The shapes of the screen in the fewer shapes of paper.</summary>
public static class PrintedMarks
{
    public static Documents.StateMark Of(Mark mark, string word) =>
        new(
            word,
            mark switch
            {
                Mark.Passed => Documents.MarkShape.Disc,
                Mark.Ready or Mark.Waiting or Mark.Draft or Mark.Trial or Mark.Ended => Documents
                    .MarkShape
                    .Ring,
                Mark.InProgress or Mark.Undecided => Documents.MarkShape.HalfDisc,
                Mark.Failed => Documents.MarkShape.Cross,
                Mark.Held or Mark.Waived or Mark.Warning => Documents.MarkShape.Triangle,
                _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, null),
            }
        );
}

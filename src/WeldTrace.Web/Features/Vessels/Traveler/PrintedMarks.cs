using WeldTrace.Documents;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>The shapes of the screen in the fewer shapes of paper.</summary>
public static class PrintedMarks
{
    public static StateMark Of(Mark mark, string word) =>
        new(
            word,
            mark switch
            {
                Mark.Passed => MarkShape.Disc,
                Mark.Ready or Mark.Waiting or Mark.Draft or Mark.Trial or Mark.Ended => MarkShape.Ring,
                Mark.InProgress or Mark.Undecided => MarkShape.HalfDisc,
                Mark.Failed => MarkShape.Cross,
                Mark.Held or Mark.Waived or Mark.Warning => MarkShape.Triangle,
                _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, null),
            }
        );
}

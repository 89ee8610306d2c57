using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents;

/// <summary>Says which limits nobody has checked against the site's own copy of their source.</summary>
internal static class UncheckedNotice
{
    private const string Opening =
        "These limits have not been checked against the site's own copy of their source:";

    public static IEnumerable<Block> Of(IReadOnlyList<string> limits) =>
        limits.Count == 0
            ? []
            : [new Notice("Unchecked limits", [Opening, .. limits], MarkShape.HalfDisc)];
}

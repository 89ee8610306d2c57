using WeldTrace.Documents.Drawings;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>One excursion laid out on the seam drawing.</summary>
/// <param name="Source">The excursion.</param>
/// <param name="Arcs">Path data, two when it reaches into the overlap.</param>
/// <param name="Leader">Path data of the line to its number.</param>
/// <param name="Label">Where its number stands.</param>
/// <param name="Sentence">The excursion in words.</param>
public sealed record SeamMark(
    SeamExcursion Source,
    IReadOnlyList<string> Arcs,
    string Leader,
    (double X, double Y) Label,
    string Sentence
);

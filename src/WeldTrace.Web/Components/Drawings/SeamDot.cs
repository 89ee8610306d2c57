namespace WeldTrace.Web.Components.Drawings;

/// <summary>A place that another record speaks of, laid out on the seam drawing.</summary>
/// <param name="Letter">Letter under which it stands in the list.</param>
/// <param name="Path">Path data of its shape.</param>
/// <param name="Label">Where its letter stands.</param>
/// <param name="Sentence">The place in words.</param>
public sealed record SeamDot(
    string Letter,
    string Path,
    (double X, double Y) Label,
    string Sentence
);

namespace WeldTrace.Documents.Layout;

/// <summary>What a document says about itself in its metadata and in the foot of each page.</summary>
internal sealed record DocumentSettings(string Title, DocumentStamp Stamp)
{
    public const string Language = "en-GB";
}

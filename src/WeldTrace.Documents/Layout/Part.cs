namespace WeldTrace.Documents.Layout;

/// <summary>A titled part of a document; it is left out when there is nothing in it.</summary>
internal static class Part
{
    public static IEnumerable<Block> Of(string title, IEnumerable<Block> blocks)
    {
        Block[] content = [.. blocks];
        return content.Length == 0 ? [] : [new Heading(title, 2), .. content];
    }
}

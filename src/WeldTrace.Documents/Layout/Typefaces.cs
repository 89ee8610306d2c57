using PdfSharp.Fonts;

namespace WeldTrace.Documents.Layout;

/// <summary>The faces shipped with the application: Source Sans 3, SIL Open Font License.</summary>
internal static class Typefaces
{
    public static readonly FontFace Regular = Load("Source Sans 3", "400Regular");
    public static readonly FontFace Italic = Load("Source Sans 3 Italic", "400Regular_Italic");
    public static readonly FontFace SemiBold = Load("Source Sans 3 SemiBold", "600SemiBold");

    private static readonly Lazy<bool> Installed = new(() =>
    {
        GlobalFontSettings.FontResolver = new Resolver();
        return true;
    });

    /// <summary>Hands the faces to the PDF library, once per process.</summary>
    public static void Install() => _ = Installed.Value;

    private static FontFace Load(string family, string file)
    {
        var name = $"SourceSans3_{file}.ttf";
        using var stream =
            typeof(Typefaces).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is not embedded.");
        var data = new byte[stream.Length];
        stream.ReadExactly(data);
        return new FontFace(family, data);
    }

    private sealed class Resolver : IFontResolver
    {
        private readonly Dictionary<string, FontFace> _faces = new[]
        {
            Regular,
            Italic,
            SemiBold,
        }.ToDictionary(face => face.Family, StringComparer.Ordinal);

        public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
            _faces.ContainsKey(familyName) ? new FontResolverInfo(familyName) : null;

        public byte[]? GetFont(string faceName) => _faces.GetValueOrDefault(faceName)?.Data;
    }
}

using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Fills a form as a person would: what it shows stays, a choice that must be made is the first, a paper is handed in.</summary>
internal static class SentForm
{
    private const string FileMark = "file:";
    private const string ChoiceMark = "choice:";

    /// <summary>A file to hand in.</summary>
    public static string File(byte[] bytes) => FileMark + Encoding.Latin1.GetString(bytes);

    /// <summary>The first choice whose words have this in them.</summary>
    public static string Choice(string words) => ChoiceMark + words;

    /// <summary>The bytes of a file to hand in; null when the value is no file.</summary>
    public static byte[]? BytesOf(string value) =>
        value.StartsWith(FileMark, StringComparison.Ordinal)
            ? Encoding.Latin1.GetBytes(value[FileMark.Length..])
            : null;

    /// <summary>The fields with what is sent in them; null when the page has no such form.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>>? Fill(IHtmlDocument page, FormRow row)
    {
        var form = page.Forms.FirstOrDefault(f =>
            f.QuerySelector("input[name=_handler]")?.GetAttribute("value") == row.Handler
        );
        return form is null
            ? null
            :
            [
                .. form.QuerySelectorAll("input, select, textarea")
                    .Where(e => e.GetAttribute("name") is { } name && !name.StartsWith('_'))
                    .Where(e => row.Fields.All(f => f.Field != e.GetAttribute("name")))
                    .Select(e => (Name: e.GetAttribute("name")!, Value: Shown(e)))
                    .Where(f => f.Value is not null)
                    .Select(f => KeyValuePair.Create(f.Name, f.Value!)),
                .. row.Fields.Select(f => KeyValuePair.Create(f.Field, Typed(form, f))),
            ];
    }

    /// <summary>The same with a web page in the place of every file.</summary>
    public static IEnumerable<KeyValuePair<string, string>> WithFalseFiles(
        IEnumerable<KeyValuePair<string, string>> fields
    ) =>
        fields.Select(f =>
            BytesOf(f.Value) is null
                ? f
                : KeyValuePair.Create(f.Key, File("<html>no paper</html>"u8.ToArray()))
        );

    /// <summary>Whether a text that was typed no longer stands in its field.</summary>
    public static bool IsLost(IHtmlDocument page, (string Field, string Value) typed) =>
        BytesOf(typed.Value) is null
        && page.QuerySelector($"[name='{typed.Field}']") switch
        {
            IHtmlTextAreaElement area => area.TextContent != typed.Value,
            IHtmlInputElement { Type: "text" or "date" } input => input.Value != typed.Value,
            _ => false,
        };

    private static string? Shown(IElement field) =>
        field switch
        {
            IHtmlSelectElement select => Chosen(select),
            IHtmlTextAreaElement area => area.TextContent,
            IHtmlInputElement { Type: "checkbox" or "radio" } box => box.IsChecked
                ? box.Value
                : null,
            IHtmlInputElement { Type: "password" } => DemoPeople.Password,
            IHtmlInputElement { Type: "file" } => File("%PDF-1.7 a report"u8.ToArray()),
            IHtmlInputElement input => input.Value ?? "",
            _ => null,
        };

    private static string? Chosen(IHtmlSelectElement select) =>
        select.Options.FirstOrDefault(o => o.HasAttribute("selected") && o.Value.Length > 0)?.Value
        ?? select.Options.FirstOrDefault(o => o.Value.Length > 0)?.Value;

    private static string Typed(IHtmlFormElement form, (string Field, string Value) typed)
    {
        if (!typed.Value.StartsWith(ChoiceMark, StringComparison.Ordinal))
        {
            return typed.Value;
        }

        var words = typed.Value[ChoiceMark.Length..];
        var fields = form.QuerySelectorAll($"[name='{typed.Field}']").ToList();
        return fields
                .OfType<IHtmlSelectElement>()
                .SelectMany(s => s.Options)
                .FirstOrDefault(o => o.Text.Contains(words, StringComparison.Ordinal))
                ?.Value
            ?? fields
                .OfType<IHtmlInputElement>()
                .First(b => b.ParentElement!.TextContent.Contains(words, StringComparison.Ordinal))
                .Value;
    }
}

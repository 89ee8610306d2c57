namespace WeldTrace.Web.Components.Forms;

/// <summary>Element ids made from posted field names.</summary>
public static class FieldId
{
    /// <summary>The id of the control with this posted name: letters, digits and hyphens only.</summary>
    public static string For(string name) =>
        string.Create(
            name.Length,
            name,
            static (span, source) =>
            {
                for (var i = 0; i < source.Length; i++)
                {
                    span[i] = char.IsAsciiLetterOrDigit(source[i]) ? source[i] : '-';
                }
            }
        );
}

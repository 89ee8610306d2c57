namespace WeldTrace.Web.Components.Forms;

/// <summary>One choice of a select field.</summary>
/// <param name="Value">What is posted.</param>
/// <param name="Text">What is read.</param>
/// <param name="Disabled">Shown, but cannot be chosen.</param>
public sealed record FieldOption(string Value, string Text, bool Disabled = false);

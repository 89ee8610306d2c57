namespace WeldTrace.Web.Components.Forms;

/// <summary>What is wrong with one field, and how to mend it.</summary>
/// <param name="Field">Posted name of the field, such as In.Serial; empty when the fault belongs to no one field.</param>
/// <param name="Sentence">One sentence to read.</param>
public sealed record FieldFault(string Field, string Sentence);

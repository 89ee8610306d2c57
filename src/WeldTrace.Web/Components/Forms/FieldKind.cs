namespace WeldTrace.Web.Components.Forms;

/// <summary>What a field takes.</summary>
public enum FieldKind
{
    /// <summary>One line of text.</summary>
    Text,

    /// <summary>A number, typed as text so that no browser rewrites it.</summary>
    Number,

    /// <summary>A day.</summary>
    Date,

    /// <summary>A day and a time of day at the site.</summary>
    DateTime,

    /// <summary>One of a list of options.</summary>
    Select,

    /// <summary>Several lines of text.</summary>
    TextArea,

    /// <summary>Yes or no.</summary>
    Checkbox,

    /// <summary>A password; never kept, never sent back.</summary>
    Password,

    /// <summary>A code that a scanner types, ended by Enter.</summary>
    Code,

    /// <summary>A file to hand in.</summary>
    File,
}

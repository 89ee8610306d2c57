namespace WeldTrace.Web.Reading;

/// <summary>Names of what can be asked, as they stand in the address.</summary>
public static class TraceFields
{
    public const string Lot = "material";
    public const string Component = "component";
    public const string Tool = "tool";
    public const string Machine = "machine";
    public const string Operator = "operator";
    public const string Certificate = "certificate";
    public const string Procedure = "procedure";
    public const string Instrument = "instrument";
    public const string Finding = "finding";
    public const string From = "from";
    public const string Until = "until";

    /// <summary>Address of the search for one thing.</summary>
    public static string Of(string field, string value) =>
        $"{Routes.Trace}?{field}={Uri.EscapeDataString(value)}";
}

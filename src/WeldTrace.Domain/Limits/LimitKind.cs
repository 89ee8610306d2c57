namespace WeldTrace.Domain.Limits;

/// <summary>What a table of limits or rules is for.</summary>
public enum LimitKind
{
    /// <summary>Tensile strength of the joint as a factor times a minimum of the parent material.</summary>
    TensileFactors,

    /// <summary>Diameter of the former in the bend test.</summary>
    BendFormers,

    /// <summary>Greatest permitted size of imperfections.</summary>
    Imperfections,

    /// <summary>Which tests a qualification needs, and how many.</summary>
    ExtentOfTesting,

    /// <summary>Rule set for the range that a qualification covers.</summary>
    QualificationRange,

    /// <summary>Group of each alloy.</summary>
    MaterialGroups,

    /// <summary>Least strength and elongation of the parent material by its product standard.</summary>
    MaterialMinima,

    /// <summary>Least examinations of a weld by its class.</summary>
    LeastExaminations,
}

/// <summary>How a shipped table came about.</summary>
public enum LimitEvidence
{
    /// <summary>Entered by the site from its own copy.</summary>
    OwnEntry,

    /// <summary>Read in the source when the program was made.</summary>
    ReadInSource,

    /// <summary>From memory when the program was made.</summary>
    FromMemory,
}

/// <summary>Where a table stands.</summary>
/// <param name="Document">Document, for instance <c>EN 14532-3</c>; 1 to 120 characters.</param>
/// <param name="Edition">Edition; 1 to 120 characters.</param>
/// <param name="Clause">Clause or table; 1 to 120 characters.</param>
public sealed record LimitSource(string Document, string Edition, string Clause)
{
    /// <summary>Document, edition and clause in one line.</summary>
    public override string ToString() =>
        Edition.All(char.IsAsciiDigit)
            ? $"{Document}:{Edition}, {Clause}"
            : $"{Document}, {Edition}, {Clause}";
}

/// <summary>That somebody compared a table with the site's own copy of its source.</summary>
/// <param name="ById">Who.</param>
/// <param name="ByName">Printed name.</param>
/// <param name="On">Day.</param>
/// <param name="OwnCopy">Which copy, for instance its number in the shop.</param>
public sealed record OwnCopyCheck(Guid ById, string ByName, DateOnly On, string OwnCopy);

/// <summary>The edition of a table that something was judged by.</summary>
/// <param name="Id">Identity of the table's edition.</param>
/// <param name="Label">Code and edition number.</param>
/// <param name="Source">Document, edition and clause.</param>
/// <param name="WasChecked">Whether it had been checked against the site's own copy.</param>
public sealed record LimitReference(Guid Id, string Label, string Source, bool WasChecked)
{
    /// <summary>Edition and source in one line, saying so when nobody had compared them.</summary>
    public string InWords =>
        $"{Label}: {Source}{(WasChecked ? "" : " (not checked against an own copy)")}";
}

/// <summary>Words for the kinds of tables.</summary>
public static class LimitWords
{
    /// <summary>The words for a kind.</summary>
    public static string Of(LimitKind kind) =>
        kind switch
        {
            LimitKind.TensileFactors => "tensile factors",
            LimitKind.BendFormers => "bend formers",
            LimitKind.Imperfections => "imperfection limits",
            LimitKind.ExtentOfTesting => "extent of testing",
            LimitKind.QualificationRange => "range of qualification",
            LimitKind.MaterialGroups => "material groups",
            LimitKind.MaterialMinima => "material minima",
            LimitKind.LeastExaminations => "least examinations by class",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
        };

    /// <summary>The words for how a table came about.</summary>
    public static string Of(LimitEvidence evidence) =>
        evidence switch
        {
            LimitEvidence.OwnEntry => "entered at this site",
            LimitEvidence.ReadInSource => "shipped, read in the source",
            LimitEvidence.FromMemory => "shipped, from memory",
            _ => throw new ArgumentOutOfRangeException(
                nameof(evidence),
                evidence,
                "Unknown evidence."
            ),
        };
}

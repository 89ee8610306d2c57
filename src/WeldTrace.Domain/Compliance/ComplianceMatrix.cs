using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Compliance;

/// <summary>
/// What published documents ask of a vessel's history, and the records that show it (NASA-STD-5006A GWR 1 and appendix B ask for such a
/// matrix with requirement, applicability and comment). A line that nothing shows says so; it never counts as met.
/// </summary>
public static class ComplianceMatrix
{
    /// <summary>What is asked, in the order of a vessel's life.</summary>
    public static IReadOnlyList<Requirement> Requirements { get; } =
    [.. RequirementRules.All.Select(r => r.Requirement)];

    /// <summary>Looks every requirement up in the records behind a vessel.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="design">Its design.</param>
    /// <param name="records">Its records and what they rest on.</param>
    public static IReadOnlyList<ComplianceLine> Of(
        Vessel vessel,
        DesignContent design,
        IReadOnlyCollection<Record> records
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(records);
        var file = new VesselFile(vessel, design, records);
        return [.. RequirementRules.All.Select(r => r.Find(file).On(r.Requirement))];
    }

    /// <summary>The word for a state.</summary>
    public static string StateWord(ComplianceState state) =>
        state switch
        {
            ComplianceState.NotApplicable => "not applicable",
            ComplianceState.Shown => "shown",
            ComplianceState.Partly => "shown in part",
            ComplianceState.NotShown => "not shown",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    /// <summary>How well the source is known, in a few words.</summary>
    public static string KnownWord(SourceKnown known) =>
        known switch
        {
            SourceKnown.Read => "read in the source",
            SourceKnown.Quoted => "read as quoted",
            SourceKnown.FromMemory => "from memory",
            _ => throw new ArgumentOutOfRangeException(nameof(known), known, "Unknown."),
        };
}

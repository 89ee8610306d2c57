using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

/// <summary>What somebody is about to weld with.</summary>
/// <param name="ToolCode">Mark of the tool, or the address on its label; null when none is chosen.</param>
/// <param name="MachineCode">Name of the machine, or the address on its label; null when none is chosen.</param>
/// <param name="Welder">Who is about to weld.</param>
/// <param name="At">UTC instant at which the run would begin.</param>
public sealed record WeldChoice(
    string? ToolCode,
    string? MachineCode,
    Actor Welder,
    DateTimeOffset At
);

public static class WeldGateLoading
{
    /// <summary>Everything that the rules before a weld look at, in one round trip, the vessel tracked; null when it has no such weld step.</summary>
    /// <param name="db">Context.</param>
    /// <param name="serial">Serial number of the vessel.</param>
    /// <param name="sequence">Step on its route.</param>
    /// <param name="choice">Who welds, with what, when.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public static async Task<WeldGateFacts?> FindWeldGateFactsAsync(
        this WeldTraceDbContext db,
        string serial,
        int sequence,
        WeldChoice choice,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(choice);
        RoundTrip trip = new(db);
        GateQuestions questions = new(trip, db, serial, choice);
        await trip.RunAsync(cancellation);
        return questions.Answered(sequence);
    }

    /// <summary>The same for the repair that a finding's decision asks for; null when the vessel has no such repair.</summary>
    /// <param name="db">Context.</param>
    /// <param name="serial">Serial number of the vessel.</param>
    /// <param name="finding">Number of the finding.</param>
    /// <param name="choice">Who welds, with what, when.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public static async Task<WeldGateFacts?> FindRepairGateFactsAsync(
        this WeldTraceDbContext db,
        string serial,
        int finding,
        WeldChoice choice,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(choice);
        RoundTrip trip = new(db);
        GateQuestions questions = new(trip, db, serial, choice);
        await trip.RunAsync(cancellation);
        return questions.AnsweredForRepair(finding);
    }
}

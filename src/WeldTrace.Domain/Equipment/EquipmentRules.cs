using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

/// <summary>Floor rule F5: the machine is in order, and the instruments that the procedure names are inside calibration.</summary>
public static class EquipmentRules
{
    /// <summary>Judges the rule.</summary>
    /// <param name="machine">Machine chosen; null when none is.</param>
    /// <param name="instruments">The register's instruments among those that the procedure names.</param>
    /// <param name="procedure">Content of the procedure to be welded to; null when there is none.</param>
    /// <param name="today">Day at the site.</param>
    public static RuleVerdict ForWelding(
        Machine? machine,
        IReadOnlyList<Instrument> instruments,
        ProcedureContent? procedure,
        DateOnly today
    )
    {
        ArgumentNullException.ThrowIfNull(instruments);
        var named = procedure?.DetailsOrNone.Instruments ?? [];
        var verdict = MachineRules.ForWelding(machine, procedure, today);
        List<string> against =
        [
            .. verdict.Standing == RuleStanding.Forbids ? [verdict.Reason] : Array.Empty<string>(),
            .. named.Select(n => Against(n, instruments, today)).OfType<string>(),
        ];
        return verdict with
        {
            Title = "Machine and instruments in order",
            Standing = against.Count == 0 ? RuleStanding.Holds : RuleStanding.Forbids,
            Reason =
                against.Count > 0 ? string.Join(" ", against)
                : named.Count == 0 ? verdict.Reason
                : $"{verdict.Reason} {Due(instruments)}",
        };
    }

    private static string? Against(
        NamedRecord named,
        IReadOnlyList<Instrument> instruments,
        DateOnly today
    ) =>
        instruments.FirstOrDefault(i => i.Id == named.Id) is { } instrument
            ? InstrumentRules.Against(instrument, today)
            : $"The procedure names instrument {named.Label}, which is not in the register.";

    private static string Due(IReadOnlyList<Instrument> instruments) =>
        $"Calibrated: {string.Join(", ", instruments.OrderBy(i => i.Mark).Select(i => $"{i.Mark} until {i.DueOn:yyyy-MM-dd}"))}.";
}

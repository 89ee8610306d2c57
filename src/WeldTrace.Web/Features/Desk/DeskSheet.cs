using Microsoft.AspNetCore.WebUtilities;
using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk;

/// <summary>A desk page as its address says: what was typed, what is wrong with it, or what follows from it.</summary>
public sealed class DeskSheet
{
    /// <summary>Longest text of a field; keeps the whole address within what servers take.</summary>
    public const int LongestText = 3000;

    private const string UnitsName = "units";

    private DeskSheet(IDeskSubject subject, UnitSystem units, Dictionary<string, string> typed)
    {
        (Subject, Units, Typed) = (subject, units, typed);
        DeskField[] fields = [.. subject.Groups.SelectMany(g => g.Fields)];
        DeskEntries entries = new(fields, typed, units);
        foreach (var field in fields.Where(f => entries.Text(f.Name).Length > LongestText))
        {
            entries.Refuse(
                field.Name,
                $"{field.Label}: the text is longer than {LongestText} signs; shorten it."
            );
        }

        var calculation = entries.AreClean ? subject.Calculate(entries) : null;
        Faults = entries.Faults;
        Calculation =
            Faults.Count > 0 || calculation is null
                ? null
                : calculation with
                {
                    Entered = [.. fields.Select(f => Entered(f, entries))],
                    Workings = [.. entries.Workings, .. calculation.Workings],
                };
    }

    public IDeskSubject Subject { get; }

    public UnitSystem Units { get; }

    /// <summary>What stands in each field.</summary>
    public IReadOnlyDictionary<string, string> Typed { get; }

    public IReadOnlyList<FieldFault> Faults { get; }

    /// <summary>What follows; null while something is wrong.</summary>
    public Calculation? Calculation { get; }

    /// <summary>Reads a sheet from the query of its address; without any field of it, the example.</summary>
    public static DeskSheet Read(IDeskSubject subject, string query, UnitSystem siteUnits)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var values = QueryHelpers.ParseQuery(query);
        var units =
            values.TryGetValue(UnitsName, out var named)
            && Enum.GetNames<UnitSystem>().Contains(named.ToString())
                ? Enum.Parse<UnitSystem>(named.ToString())
                : siteUnits;
        DeskField[] fields = [.. subject.Groups.SelectMany(g => g.Fields)];
        var isFresh = !fields.Any(f => values.ContainsKey(f.Name));
        return new DeskSheet(
            subject,
            units,
            fields.ToDictionary(
                f => f.Name,
                f =>
                    isFresh ? f.InitialIn(units)
                    : values.TryGetValue(f.Name, out var text) ? text.ToString()
                    : ""
            )
        );
    }

    /// <summary>An address with everything that was typed.</summary>
    public string At(string path) => At(path, Units);

    /// <summary>The same sheet in the other units, its numbers converted.</summary>
    public string InOtherUnits() => At(Subject.Path, Other);

    public UnitSystem Other =>
        Units == UnitSystem.Metric ? UnitSystem.InchPound : UnitSystem.Metric;

    private string At(string path, UnitSystem units)
    {
        Dictionary<string, string?> values = new() { [UnitsName] = units.ToString() };
        foreach (var field in Subject.Groups.SelectMany(g => g.Fields))
        {
            values[field.Name] = field.Converted(Typed[field.Name], Units, units);
        }

        return QueryHelpers.AddQueryString(path, values);
    }

    private LabelledValue Entered(DeskField field, DeskEntries entries)
    {
        var text = entries.Text(field.Name);
        var shown = field.Options.FirstOrDefault(o => o.Value == text)?.Text ?? text;
        var unit = field.UnitSymbol(Units);
        return new(
            field.Label,
            shown.Length == 0 ? null
                : unit is null ? shown
                : $"{shown} {unit}"
        );
    }
}

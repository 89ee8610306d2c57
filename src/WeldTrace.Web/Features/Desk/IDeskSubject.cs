using WeldTrace.Documents.CalculationSheets;

namespace WeldTrace.Web.Features.Desk;

/// <summary>Something that is calculated at the desk, without any vessel.</summary>
public interface IDeskSubject
{
    /// <summary>Its address.</summary>
    string Path { get; }

    /// <summary>Last part of its address.</summary>
    string Name => Path[(Routes.Desk.Length + 1)..];

    string Title { get; }

    /// <summary>What one learns from it, a sentence.</summary>
    string Purpose { get; }

    IReadOnlyList<DeskGroup> Groups { get; }

    /// <summary>Calculates from what was entered; null when that is refused, with its faults in the entries.</summary>
    Calculation? Calculate(DeskEntries entries);
}

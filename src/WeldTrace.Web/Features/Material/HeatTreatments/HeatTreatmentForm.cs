using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Material.HeatTreatments;

public sealed class HeatTreatmentForm
{
    public string? Number { get; set; }

    public string? Furnace { get; set; }

    public DateOnly? On { get; set; }

    public string? Instruction { get; set; }

    public string? Lower { get; set; }

    public string? Upper { get; set; }

    public string? ShortestMinutes { get; set; }

    public string? LongestMinutes { get; set; }

    public string? Lowest { get; set; }

    public string? Highest { get; set; }

    public string? Minutes { get; set; }

    public string? InstrumentMark { get; set; }

    public string? Parts { get; set; }

    public IFormFile? File { get; set; }

    public IReadOnlyList<string> Lines =>
        (Parts ?? "").Split(
            ['\n', '\r', ',', ';'],
            StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
        );

    public HeatCycle ReadAsked(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            Instruction ?? "",
            entries.Number(Lower, "°C", "Lowest temperature asked for", nameof(Lower)),
            entries.Number(Upper, "°C", "Highest temperature asked for", nameof(Upper)),
            entries.Number(ShortestMinutes, "min", "Shortest time", nameof(ShortestMinutes)),
            entries.Number(LongestMinutes, "min", "Longest time", nameof(LongestMinutes))
        );
    }

    public HeatRecord ReadKept(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            entries.Number(Lowest, "°C", "Lowest temperature read", nameof(Lowest)),
            entries.Number(Highest, "°C", "Highest temperature read", nameof(Highest)),
            entries.Number(Minutes, "min", "Length of the soak", nameof(Minutes)),
            InstrumentMark ?? ""
        );
    }
}

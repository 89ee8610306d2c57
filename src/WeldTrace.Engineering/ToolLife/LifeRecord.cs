using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>What one tool has done.</summary>
/// <param name="Used">Metres welded, above zero; plunges may count as an equivalent length.</param>
/// <param name="Failed">True when it failed by the mode that is studied; false when it is in use or was retired for another reason.</param>
public readonly record struct LifeRecord(Length Used, bool Failed);

/// <summary>A two-sided confidence interval of a length.</summary>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Confidence">Confidence, between 0 and 1.</param>
public readonly record struct LengthInterval(Length Lower, Length Upper, double Confidence);

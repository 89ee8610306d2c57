using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Vessels;

/// <summary>Where a vessel went when it left the site, so that it can be called back.</summary>
/// <param name="Consignee">Who received it, with the place; 1 to 200 characters.</param>
/// <param name="Papers">Number of the delivery note or waybill; 1 to 80 characters.</param>
public sealed record Shipment(string Consignee, string Papers)
{
    /// <summary>Longest consignee, in characters.</summary>
    public const int LongestConsignee = 200;

    /// <summary>Longest number of the papers, in characters.</summary>
    public const int LongestPapers = 80;

    internal static void Check(Checks checks, Shipment shipment) =>
        checks
            .Text(
                shipment.Consignee,
                LongestConsignee,
                "Say who receives the vessel, and where",
                nameof(Consignee)
            )
            .Text(
                shipment.Papers,
                LongestPapers,
                "Enter the number of the delivery note or waybill",
                nameof(Papers)
            );
}

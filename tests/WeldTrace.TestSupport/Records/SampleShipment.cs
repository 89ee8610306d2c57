using WeldTrace.Domain.Vessels;

namespace WeldTrace.TestSupport.Records;

/// <summary>An invented shipment.</summary>
public static class SampleShipment
{
    public static Shipment Lisbon { get; } = new("Float store, Lisbon, quay 4", "DN-0412");
}

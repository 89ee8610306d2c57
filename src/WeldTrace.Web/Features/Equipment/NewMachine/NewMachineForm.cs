namespace WeldTrace.Web.Features.Equipment.NewMachine;

public sealed class NewMachineForm : CapabilityForm
{
    public string? Name { get; set; }

    public string? Description { get; set; }

    public string? ControlMode { get; set; }

    /// <summary>Whether it has not yet shown here that it welds as it should.</summary>
    public bool IsNewlyInstalled { get; set; }
}

namespace WeldTrace.Web.Features.Equipment.NewMachine;

public sealed class NewMachineForm
{
    public string? Name { get; set; }

    public string? Description { get; set; }

    public string? ControlMode { get; set; }
}

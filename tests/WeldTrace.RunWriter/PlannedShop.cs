using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.RunWriter;

/// <summary>What the people weld with, named so that no other start of the process names anything the same.</summary>
internal sealed class PlannedShop
{
    private readonly string _name;
    private readonly ToolDesign _toolDesign;
    private readonly VesselDesign _design;
    private readonly MaterialLot _lot;
    private readonly ProcedureRevision _procedure;
    private readonly IReadOnlyList<Certificate> _certificates;

    public PlannedShop(string name)
    {
        _name = name;
        _toolDesign = SampleTools.Design("TD-" + name);
        _design = SampleDesigns.Released("NR-" + name, "WP-" + name);
        _lot = SampleMaterial.Lot("ML-" + name);
        _procedure = SampleProcedures.Released(_toolDesign, "WP-" + name);
        _certificates =
        [
            .. SamplePeople.Welders.Select(w =>
                SampleCertificates.Welder(w, $"OP-{name}-{w.PrintedName}")
            ),
        ];
    }

    /// <summary>The records that every vessel rests on.</summary>
    public IReadOnlyList<object> Ground =>
        [_toolDesign, _design, _lot, _procedure, .. _certificates];

    /// <summary>A machine of one person's own.</summary>
    public Machine Machine(string person) => SampleMachines.Entered($"Gantry {_name}{person}");

    /// <summary>The next vessel of one person, and a new tool for it.</summary>
    public (Vessel Vessel, Tool Tool) Next(string person, int number)
    {
        var code = FormattableString.Invariant($"{_name}{person}-{number:D4}");
        return (
            SampleVessels.Planned(_design, _lot, "NR" + code),
            SampleTools.InService(_toolDesign, "T-" + code)
        );
    }
}

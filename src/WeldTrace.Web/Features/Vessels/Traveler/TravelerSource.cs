using WeldTrace.Documents;
using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>Everything that a traveler is printed from, read at one moment.</summary>
public sealed record TravelerSource(
    Site Site,
    VesselHistory History,
    IReadOnlyDictionary<Guid, ProcedureRevision> Procedures,
    IReadOnlyDictionary<Guid, ToolDesign> ToolDesigns,
    IReadOnlyDictionary<string, byte[]> Photographs,
    IReadOnlyDictionary<Guid, ProcessLogPlot> Charts,
    string RecordAddress,
    DocumentStamp Stamp
);

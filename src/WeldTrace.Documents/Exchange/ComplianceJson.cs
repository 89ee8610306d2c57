using System.Text.Json.Nodes;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Documents.Exchange;

/// <summary>The compliance matrix of a vessel as canonical JSON; its form is <c>bundle.schema.json#/$defs/compliance</c>.</summary>
public static class ComplianceJson
{
    private const string Format = "weldtrace-compliance-1";

    /// <summary>Writes the matrix.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="serial">Its serial number.</param>
    /// <param name="lines">Lines of the matrix.</param>
    public static byte[] Write(Guid vessel, string serial, IReadOnlyList<ComplianceLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return CanonicalJson.FromNode(
            new JsonObject
            {
                ["format"] = Format,
                ["vessel"] = RecordUri.Of(vessel),
                ["vesselSerial"] = serial,
                ["lines"] = new JsonArray([.. lines.Select(Line)]),
            }
        );
    }

    private static JsonObject Line(ComplianceLine line) =>
        new()
        {
            ["number"] = line.Requirement.Number,
            ["requirement"] = line.Requirement.Text,
            ["source"] = line.Requirement.Source,
            ["sourceKnown"] = ComplianceMatrix.KnownWord(line.Requirement.Known),
            ["applicable"] = line.IsApplicable,
            ["state"] = ComplianceMatrix.StateWord(line.State),
            ["evidence"] = new JsonArray([.. line.Evidence.Select(Evidence)]),
            ["comment"] = line.Comment,
        };

    private static JsonObject Evidence(RecordName record) =>
        new()
        {
            ["kind"] = record.Kind,
            ["record"] = RecordUri.Of(record.Id),
            ["label"] = record.Label,
        };
}

using System.Text.Json;
using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Documents.Exchange;

/// <summary>Weld runs as transformations of the components into the vessel, and their logs as what sensors reported.</summary>
internal static class EpcisWelding
{
    private const string Log = "log";

    public static IEnumerable<EpcisEvent> RunsOf(ExchangeSource source)
    {
        var inputs = source
            .Records.OfType<Vessel>()
            .Where(v => v.Id == source.VesselId)
            .SelectMany(v => v.Components)
            .Select(c => c.ComponentId is { } id && source.Holds(id) ? id : c.MaterialLotId)
            .Where(source.Holds)
            .Distinct()
            .ToList();
        return Runs(source)
            .Select(run => (Run: run, Entry: source.First(run.Id, r => r.ContainsKey("endedAt"))))
            .Where(pair => pair.Entry is not null)
            .Select(pair => new EpcisEvent(pair.Entry!, "TransformationEvent")
            {
                At = pair.Run.EndedAt ?? pair.Entry!.At,
                BizStep = pair.Run.Repair is null ? "assembling" : "repairing",
                Disposition = "in_progress",
                Things = [source.VesselId],
                Inputs = inputs,
                Transformation = RecordUri.Of(source.VesselId),
                Papers = source.Holds(pair.Run.ProcedureRevisionId)
                    ? [(EpcisHistory.Own("procedure"), pair.Run.ProcedureRevisionId)]
                    : [],
                Words =
                    $"{pair.Run.Label}: friction stir weld by {pair.Run.ProcedureLabel}, tool {pair.Run.ToolMark}, "
                    + WeldRun.StateWord(pair.Run.State),
            });
    }

    /// <summary>Each judgement of a log, and those that a correction of the phases replaced.</summary>
    public static (IReadOnlyList<EpcisEvent> Events, IReadOnlyList<WrongEvent> Corrected) LogsOf(
        ExchangeSource source
    )
    {
        List<EpcisEvent> events = [];
        List<WrongEvent> corrected = [];
        foreach (var run in Runs(source))
        {
            var judged = source
                .Of(run.Id)
                .Select(e => (Entry: e, Log: ExchangeSource.Content(e)[Log]?.ToJsonString()))
                .Where(e => e.Log is not null)
                .DistinctBy(e => e.Log)
                .Select(e => Judgement(source, run, e.Entry, Read(e.Log!)))
                .ToList();
            events.AddRange(judged);
            corrected.AddRange(
                judged
                    .Zip(judged.Skip(1))
                    .Select(p => new WrongEvent(
                        p.First,
                        p.Second.Entry,
                        "incorrect_data",
                        [p.Second]
                    ))
            );
        }

        return (events, corrected);
    }

    private static IEnumerable<WeldRun> Runs(ExchangeSource source) =>
        source.Records.OfType<WeldRun>().OrderBy(r => r.StartedAt).ThenBy(r => r.Id);

    private static LogSummary Read(string json) =>
        JsonSerializer.Deserialize<LogSummary>(json, DomainJson.Options)!;

    private static EpcisEvent Judgement(
        ExchangeSource source,
        WeldRun run,
        LedgerEntry entry,
        LogSummary log
    ) =>
        new(entry, "ObjectEvent")
        {
            At = run.EndedAt ?? entry.At,
            Action = "OBSERVE",
            BizStep = "sensor_reporting",
            Things = [source.VesselId],
            Sensors = Sensors(source, run, log),
            Words = $"{run.Label}: process log of the machine, over the judged traverse",
        };

    private static JsonArray? Sensors(ExchangeSource source, WeldRun run, LogSummary log)
    {
        var reports = log.Parameters.Select(Report).ToArray<JsonNode>();
        if (reports.Length == 0)
        {
            return null;
        }

        var about = new JsonObject
        {
            ["startTime"] = LedgerTime.Print(run.StartedAt),
            ["endTime"] = LedgerTime.Print(run.EndedAt ?? run.StartedAt),
        };
        if (source.Files.Contains(log.CsvSha256))
        {
            about["rawData"] = RecordUri.File(log.CsvSha256);
        }

        if (source.Holds(run.MachineId))
        {
            about["deviceID"] = RecordUri.Of(run.MachineId);
        }

        return
        [
            new JsonObject
            {
                ["sensorMetadata"] = about,
                ["sensorReport"] = new JsonArray(reports),
            },
        ];
    }

    private static JsonObject Report(LoggedParameter logged)
    {
        var (type, unit) = Unit(logged.Parameter);
        return new JsonObject
        {
            ["type"] = type,
            ["minValue"] = logged.MinimumSi,
            ["meanValue"] = logged.MeanSi,
            ["maxValue"] = logged.MaximumSi,
            ["sDev"] = logged.StandardDeviationSi,
            ["uom"] = unit,
            [EpcisHistory.Own("parameter")] = JsonNamingPolicy.KebabCaseLower.ConvertName(
                logged.Parameter.ToString()
            ),
        };
    }

    // Types of CBV 2.0; units of UN/ECE Recommendation 20 for the coherent SI units, its codes from memory.
    private static (string Type, string Unit) Unit(WeldParameter parameter) =>
        parameter switch
        {
            WeldParameter.SpindleSpeed => ("AngularVelocity", "2A"),
            WeldParameter.TravelSpeed or WeldParameter.PlungeRate => ("Speed", "MTS"),
            WeldParameter.AxialForce => ("Force", "NEW"),
            WeldParameter.Torque => ("Torque", "NU"),
            WeldParameter.PlungeDepth
            or WeldParameter.HeelPlungeDepth
            or WeldParameter.PenetrationLigament
            or WeldParameter.LateralOffset => ("Length", "MTR"),
            WeldParameter.DwellTime or WeldParameter.EndDwellTime or WeldParameter.RampTime => (
                "Time",
                "SEC"
            ),
            WeldParameter.TiltAngle or WeldParameter.SideTiltAngle => ("Angle", "C81"),
            WeldParameter.ToolTemperature => ("Temperature", "KEL"),
            _ => throw new ArgumentOutOfRangeException(
                nameof(parameter),
                parameter,
                "Unknown parameter."
            ),
        };
}

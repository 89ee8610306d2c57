using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Exchange;

/// <summary>
/// The physical history of a vessel as a document of GS1 EPCIS 2.0 (JSON-LD, CBV 2.0 words, private names): what came in,
/// what was welded, tested and found, where the vessel went. What was wrong, or no longer stands, is told again with an error declaration.
/// </summary>
public static class EpcisHistory
{
    private const string Context = "https://ref.gs1.org/standards/epcis/2.0.0/epcis-context.jsonld";

    // A name under .invalid (RFC 2606) belongs to nobody and leads nowhere.
    private const string OwnTerms = "https://terms.invalid/weld-history#";
    private const string OwnPrefix = "weld";

    /// <summary>The document as canonical JSON.</summary>
    public static byte[] Write(ExchangeSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var (tests, wrong) = EpcisTests.Of(source);
        var (logs, corrected) = EpcisWelding.LogsOf(source);
        var (findings, replaced) = EpcisFindings.Of(source);
        IEnumerable<EpcisEvent> events =
        [
            .. EpcisThings.Of(source),
            .. EpcisWelding.RunsOf(source),
            .. logs,
            .. tests,
            .. findings,
        ];
        var list = events
            .OrderBy(e => e.Entry.Number)
            .Select(e => (e.Entry.Number, Json: e.ToJson(source.Zone)))
            .Concat(
                wrong
                    .Concat(corrected)
                    .Concat(replaced)
                    .Select(w =>
                        (
                            w.By.Number,
                            Json: w.Wrong.ToDeclaration(source.Zone, w.By, w.Reason, w.Instead)
                        )
                    )
            )
            .OrderBy(e => e.Number)
            .Select(e => (JsonNode)e.Json);
        return CanonicalJson.FromNode(
            new JsonObject
            {
                ["@context"] = new JsonArray(Context, new JsonObject { [OwnPrefix] = OwnTerms }),
                ["type"] = "EPCISDocument",
                ["schemaVersion"] = "2.0",
                ["creationDate"] = LedgerTime.Print(source.MadeAt),
                ["epcisBody"] = new JsonObject { ["eventList"] = new JsonArray([.. list]) },
            }
        );
    }

    /// <summary>A term of our own.</summary>
    internal static string Own(string term) => OwnPrefix + ":" + term;
}

/// <summary>An event that an act declared wrong, or that another one took the place of.</summary>
internal sealed record WrongEvent(
    EpcisEvent Wrong,
    LedgerEntry By,
    string Reason,
    IReadOnlyList<EpcisEvent> Instead
);

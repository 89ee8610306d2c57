using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Exchange;

/// <summary>
/// Which version of which record came from which, by which act and by whom, as W3C PROV-JSON: revisions and their
/// authors from the ledger, and what rests on what (<see cref="ProvSteps"/>).
/// </summary>
public static class ProvLineage
{
    private const string Own = "weld";
    private const string OwnTerms = "https://terms.invalid/weld-history#";

    /// <summary>The document as canonical JSON.</summary>
    public static byte[] Write(ExchangeSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var document = new ProvDocument();

        // First, so that a run's operator stands once, with the plan.
        ProvSteps.Add(document, source);
        foreach (var entry in source.Entries)
        {
            AddEntry(document, entry);
        }

        AddFiles(document, source);
        return CanonicalJson.FromNode(document.ToJson((Own, OwnTerms)));
    }

    private static void AddEntry(ProvDocument document, LedgerEntry entry)
    {
        var made = ProvDocument.Version(entry);
        var (act, person) = (ProvDocument.Act(entry), ProvDocument.Name(entry.ActorId));
        var at = LedgerTime.Print(entry.At);
        document.Add(
            "entity",
            made,
            ("prov:type", ProvDocument.Type(Own, entry.RecordKind)),
            ("weld:version", entry.RecordVersion)
        );
        document.Add(
            "activity",
            act,
            ("prov:startTime", at),
            ("prov:endTime", at),
            ("prov:label", entry.Act),
            ("weld:entry", entry.Number)
        );
        document.Add(
            "agent",
            person,
            ("prov:type", ProvDocument.Type("prov", "Person")),
            ("prov:label", entry.ActorName)
        );
        document.Relate("wasGeneratedBy", ("entity", made), ("activity", act));
        document.Relate("wasAttributedTo", ("entity", made), ("agent", person));
        if (!document.HasRelation("wasAssociatedWith", act))
        {
            document.Relate("wasAssociatedWith", ("activity", act), ("agent", person));
        }

        if (entry.RecordVersion > 1)
        {
            document.Derive(
                made,
                ProvDocument.Version(entry.RecordId, entry.RecordVersion - 1),
                "Revision"
            );
        }
    }

    /// <summary>Attachments and logs, from the version that named them first.</summary>
    private static void AddFiles(ProvDocument document, ExchangeSource source)
    {
        foreach (var entries in source.Entries.GroupBy(e => e.RecordId))
        {
            HashSet<string> named = [];
            foreach (var entry in entries)
            {
                var (attachments, logs) = NamedHashes.In(entry.Content);
                foreach (
                    var sha256 in logs.Concat(attachments)
                        .Where(source.Files.Contains)
                        .Where(named.Add)
                )
                {
                    var file = ProvDocument.File(sha256);
                    document.Add(
                        "entity",
                        file,
                        (
                            "prov:type",
                            ProvDocument.Type(Own, logs.Contains(sha256) ? "process-log" : "file")
                        )
                    );
                    document.Relate(
                        "used",
                        ("activity", ProvDocument.Act(entry)),
                        ("entity", file)
                    );
                    document.Derive(ProvDocument.Version(entry), file, "PrimarySource");
                }
            }
        }
    }
}

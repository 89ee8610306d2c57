using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using Measured = WeldTrace.Domain.Records.Measured;
using MeasuredValue = WeldTrace.Engineering.Conformity.Measured;

namespace WeldTrace.Domain.Material;

public sealed partial class MaterialLot
{
    private const string DocumentSource = "EN 10204:2004 (second-hand)";

    /// <summary>Files the inspection document; a later one takes the place of the earlier, which stays in the ledger.</summary>
    /// <param name="type">Type.</param>
    /// <param name="productStandard">Product standard that it names; 1 to 80 characters.</param>
    /// <param name="fileSha256">Scan; null keeps the one on file.</param>
    /// <param name="actor">Who files it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome FileDocument(
        InspectionDocumentType type,
        string productStandard,
        string? fileSha256,
        Actor actor,
        DateTimeOffset at
    )
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Inspector, Role.QualityManager)
            .Text(
                productStandard,
                LongestText,
                "Name the product standard that the document names",
                nameof(InspectionDocument.ProductStandard)
            );
        if (checks.AllHold)
        {
            Document = new(type, productStandard.Trim(), fileSha256 ?? Document?.FileSha256);
            Note(actor, at, "inspection document filed", InspectionDocuments.Word(type));
        }

        return checks.ToOutcome();
    }

    /// <summary>Enters the results of the document and judges them by a table of minima.</summary>
    /// <param name="values">Results; at least one.</param>
    /// <param name="minima">Table of material minima; null when the site has none for the standard.</param>
    /// <param name="actor">Who enters them.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordResults(
        MaterialValues values,
        LimitTable? minima,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(values);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Inspector, Role.QualityManager)
            .That(
                Document is not null,
                "document",
                "File the inspection document first; its results are entered from it.",
                null,
                DocumentSource
            )
            .That(
                values
                    is not {
                        TensileStrength: null,
                        ProofStrength: null,
                        Elongation: null,
                        Thickness: null
                    },
                "values",
                "Enter at least one result of the document.",
                nameof(values.TensileStrength)
            );
        CheckValue(checks, values.TensileStrength, "MPa", nameof(values.TensileStrength));
        CheckValue(checks, values.ProofStrength, "MPa", nameof(values.ProofStrength));
        CheckValue(checks, values.Elongation, "%", nameof(values.Elongation));
        CheckValue(checks, values.Thickness, "mm", nameof(values.Thickness));
        checks.That(
            values is not { TensileStrength: { } ultimate, ProofStrength: { } proof }
                || proof.InUnit() <= ultimate.InUnit(),
            "order",
            "Rp0.2 can't lie above Rm; check which is which.",
            nameof(values.ProofStrength)
        );
        if (checks.AllHold)
        {
            Results = Judge(values, minima);
            Note(
                actor,
                at,
                "results of the inspection entered",
                Results.Misses ? "below a minimum" : null
            );
        }

        return checks.ToOutcome();
    }

    private MaterialResults Judge(MaterialValues values, LimitTable? minima)
    {
        var thickness = values.Thickness is { } measured
            ? Length.FromMillimetres(measured.InUnit())
            : (Length?)null;
        var least = minima is null
            ? null
            : MaterialMinima.Find(minima, Alloy, Temper, Form, thickness);
        return new MaterialResults(
            values,
            least is null ? null : minima!.Reference,
            [
                Line("Rm", values.TensileStrength, least?.TensileStrength, "MPa"),
                Line("Rp0.2", values.ProofStrength, least?.ProofStrength, "MPa"),
                Line("A", values.Elongation, least?.Elongation, "%"),
            ]
        );
    }

    private static MaterialLine Line(string name, Measured? value, string? least, string unit)
    {
        if (least is null)
        {
            return new(name, value, null, null, value is null ? "Not given." : "No minimum known.");
        }

        var limit = new Measured(least, unit);
        if (value is null)
        {
            return new(
                name,
                null,
                limit,
                Verdict.Undecided,
                $"The standard asks for at least {limit}; the document gives no {name}."
            );
        }

        var judged = Comparison.AtLeast(
            new MeasuredValue(value.InUnit(), unit),
            WrittenLimit.Parse(least, unit)
        );
        return new(name, value, limit, judged.Verdict, judged.Sentence);
    }

    private static void CheckValue(Checks checks, Measured? value, string unit, string field) =>
        checks.That(
            value is null || (value.Unit == unit && value.InUnit() > 0),
            "value",
            $"Give the result in {unit}, above zero.",
            field
        );
}

using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Material;

/// <summary>A lot of parent material with its cast number and inspection document.</summary>
public sealed partial class MaterialLot : Record
{
    /// <summary>Longest word.</summary>
    public const int LongestText = 80;

    private MaterialLot(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "material-lot";

    /// <inheritdoc/>
    public override string Label => Number;

    /// <summary>Lot number of the site; unique.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Alloy, for instance <c>6061</c>.</summary>
    public string Alloy { get; private set; } = "";

    /// <summary>Temper, for instance <c>T6</c>.</summary>
    public string Temper { get; private set; } = "";

    /// <summary>Cast (heat) number.</summary>
    public string CastNumber { get; private set; } = "";

    /// <summary>Product form, for instance <c>extruded tube</c>.</summary>
    public string Form { get; private set; } = "";

    /// <summary>Number of the inspection document (EN 10204:2004).</summary>
    public string CertificateNumber { get; private set; } = "";

    /// <summary>Inspection document with its type and scan; null until it is filed.</summary>
    public InspectionDocument? Document { get; private set; }

    /// <summary>Results of the document, judged; null until they are entered.</summary>
    public MaterialResults? Results { get; private set; }

    /// <summary>Enters a lot.</summary>
    public static Outcome<MaterialLot> Enter(
        string number,
        string alloy,
        string temper,
        string castNumber,
        string form,
        string certificateNumber,
        Actor actor,
        DateTimeOffset at
    )
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Inspector, Role.QualityManager)
            .Text(number, LongestText, "Give the lot number", nameof(Number))
            .Text(alloy, LongestText, "Give the alloy", nameof(Alloy))
            .Text(temper, LongestText, "Give the temper", nameof(Temper))
            .Text(castNumber, LongestText, "Give the cast number", nameof(CastNumber))
            .Text(form, LongestText, "Give the product form", nameof(Form))
            .Text(
                certificateNumber,
                LongestText,
                "Give the number of the inspection document",
                nameof(CertificateNumber)
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var lot = new MaterialLot(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            Alloy = alloy.Trim(),
            Temper = temper.Trim(),
            CastNumber = castNumber.Trim(),
            Form = form.Trim(),
            CertificateNumber = certificateNumber.Trim(),
        };
        lot.Note(actor, at, "material lot entered");
        return lot;
    }
}

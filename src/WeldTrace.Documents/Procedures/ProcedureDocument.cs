using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Procedures;

/// <summary>The order of a procedure sheet's parts.</summary>
internal static class ProcedureDocument
{
    public static string Title(ProcedureIdentity identity)
    {
        var kind = identity.IsPreliminary ? "pWPS" : "WPS";
        return $"{kind} {identity.Number} revision {identity.Revision}";
    }

    public static IReadOnlyList<Block> Blocks(ProcedureSheetModel model) =>
        [
            .. Head(model),
            .. model.Before.SelectMany(Values),
            .. model.Sketch is { } sketch ? Part.Of("Sketch", [new Picture(sketch)]) : [],
            .. Windows(model.Parameters),
            .. Computed(model.Computed),
            .. Part.Of(
                "Pass layout",
                model.Joints.SelectMany(j => JointPart.Blocks(j, model.Stamp))
            ),
            .. model.After.SelectMany(Values),
            .. Part.Of("Changes from the revision before", model.Changes.Select(Sentence)),
            .. SignaturePart.Blocks(model.Signatures, model.SignedOnPaper, model.Stamp),
            .. SourceTable.Blocks(model.Sources),
        ];

    private static IEnumerable<Block> Head(ProcedureSheetModel model)
    {
        var identity = model.Identity;
        var zone = model.Stamp.TimeZone;
        var released = identity.ReleasedAt is { } at ? SiteTime.Minute(at, zone) : null;
        GridItem[] items =
        [
            new("Title", identity.Title),
            GridItem.Of("State", identity.State),
            new("Released", released),
            new("Qualified by", identity.QualifiedBy),
            new("Supersedes", identity.Supersedes),
            new("Superseded by", identity.SupersededBy),
            .. identity.Particulars.Select(GridItem.Of),
        ];
        var kind = identity.IsPreliminary
            ? "Preliminary welding procedure specification, friction stir welding"
            : "Welding procedure specification, friction stir welding";
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading(Title(identity), 1),
            new Paragraph(kind),
            Grid.Of(items, pairs: 1),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Restriction is not null)
        {
            yield return new Notice("Restricted use", [model.Restriction], MarkShape.Triangle);
        }

        yield return Cautions.ForWelding();
        foreach (var notice in UncheckedNotice.Of(model.UncheckedLimits))
        {
            yield return notice;
        }
    }

    private static IEnumerable<Block> Values(ValueGroup group) =>
        Part.Of(group.Heading, [Grid.Of(group.Values.Select(GridItem.Of))]);

    private static IEnumerable<Block> Windows(IReadOnlyList<ParameterLine> parameters)
    {
        TableColumn[] columns =
        [
            new("Parameter", 26),
            new("Unit", 12),
            new("Set point", 12, IsNumber: true),
            new("Lower", 12, IsNumber: true),
            new("Upper", 12, IsNumber: true),
            new("Essential", 12),
            new("Remark", 30),
        ];
        var rows = parameters.Select(line => new TableRow([
            new Cell(line.Name) { IsHead = true },
            line.Unit,
            line.SetPoint,
            line.Lower,
            line.Upper,
            line.IsEssential ? "yes" : "no",
            line.Remark,
        ]));
        return parameters.Count == 0
            ? []
            : Part.Of("Parameter windows", [new Table(columns, [.. rows])]);
    }

    private static IEnumerable<Block> Computed(IReadOnlyList<ComputedLine> lines)
    {
        TableColumn[] columns =
        [
            new("Figure", 24),
            new("Unit", 12),
            new("At set point", 14, IsNumber: true),
            new("Least", 12, IsNumber: true),
            new("Greatest", 12, IsNumber: true),
            new("Judgement", 22),
        ];
        var rows = lines.Select(line => new TableRow([
            new Cell(line.Name) { IsHead = true },
            line.Unit,
            line.AtSetPoint,
            line.Least,
            line.Greatest,
            Cell.Of(line.Judgement),
        ])
        {
            Note = line.Working,
        });
        return lines.Count == 0 ? [] : Part.Of("Computed figures", [new Table(columns, [.. rows])]);
    }

    private static Paragraph Sentence(string text) => new(text);
}

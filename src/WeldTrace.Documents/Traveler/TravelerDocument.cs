using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>The order of a traveler's parts; a part without records is left out, findings and signatures never are.</summary>
internal static class TravelerDocument
{
    public static IReadOnlyList<Block> Blocks(TravelerModel model)
    {
        var stamp = model.Stamp;
        return
        [
            .. TravelerHead.Blocks(model),
            .. Part.Of("Route", RouteBlocks(model)),
            .. Part.Of("Components and material", ComponentBlocks(model)),
            .. Part.Of("Preparation", PreparationBlocks(model)),
            .. Part.Of(
                "Joints and passes",
                model.Joints.SelectMany(j => JointPart.Blocks(j, stamp))
            ),
            .. Part.Of(
                "Weld runs",
                model.WeldRuns.SelectMany(run => WeldRunPart.Blocks(run, stamp))
            ),
            .. Part.Of(
                "Leak tests",
                model.LeakTests.SelectMany(t => LeakTestPart.Blocks(t, stamp))
            ),
            .. Part.Of(
                "Pressure tests",
                model.PressureTests.SelectMany(test => PressureTestPart.Blocks(test, stamp))
            ),
            .. Part.Of(
                "Sections and examinations",
                model.Sections.SelectMany(section => SectionPart.Blocks(section, stamp))
            ),
            .. Part.Of("Laboratory tests", LaboratoryPart.Blocks(model.Laboratory)),
            .. FindingPart.Blocks(model),
            .. SignaturePart.Blocks(model.Signatures, model.SignedOnPaper, stamp),
        ];
    }

    private static IEnumerable<Block> RouteBlocks(TravelerModel model) =>
        model.Route.Count == 0 ? [] : [new SeamLine(model.Route, model.Stamp.TimeZone)];

    private static IEnumerable<Block> ComponentBlocks(TravelerModel model)
    {
        if (model.Components.Count == 0)
        {
            return [];
        }

        TableColumn[] columns =
        [
            new("Component", 20),
            new("Serial or batch", 18),
            new("Alloy and temper", 18),
            new("Cast no.", 16),
            new("Certificate", 24),
        ];
        var rows = model.Components.Select(line => new TableRow([
            line.Name,
            line.Serial,
            line.Material,
            line.CastNumber,
            line.Certificate,
        ])
        {
            Struck = line.Superseded is not null,
            Note = CorrectionText.Note(line.Superseded, model.Stamp.TimeZone),
        });
        return [new Table(columns, [.. rows])];
    }

    private static IEnumerable<Block> PreparationBlocks(TravelerModel model)
    {
        if (model.Preparation.Count == 0)
        {
            return [];
        }

        TableColumn[] columns =
        [
            new("When", 18),
            new("What", 14),
            new("Of", 18),
            new("Done and found", 38),
            new("By", 16),
        ];
        var rows = model.Preparation.Select(line => new TableRow([
            line.When,
            line.What,
            line.Of,
            line.Text,
            line.By,
        ]));
        return [new Table(columns, [.. rows])];
    }
}

namespace WeldTrace.Domain.Tracing;

/// <summary>What a thing is to the vessel that it helped to make.</summary>
public enum GenealogyGroup
{
    /// <summary>Lots of parent material.</summary>
    MaterialLots,

    /// <summary>Heat treatments of parts or of the vessel.</summary>
    HeatTreatments,

    /// <summary>Components.</summary>
    Parts,

    /// <summary>The vessel, its design and its production lot.</summary>
    Vessel,

    /// <summary>Cleaning and fit-up of joints.</summary>
    Preparation,

    /// <summary>Weld runs.</summary>
    Runs,

    /// <summary>Tests and examinations of the vessel.</summary>
    Tests,

    /// <summary>Tests of samples in a laboratory.</summary>
    Laboratory,

    /// <summary>Findings.</summary>
    Findings,

    /// <summary>Concessions.</summary>
    Concessions,

    /// <summary>Reviews of signals that control charts showed of the runs.</summary>
    SignalReviews,

    /// <summary>Steps that were signed off without readings.</summary>
    SignOffs,

    /// <summary>Revisions of welding procedures.</summary>
    Procedures,

    /// <summary>Tools.</summary>
    Tools,

    /// <summary>Machines.</summary>
    Machines,

    /// <summary>Production tests that the runs rest on.</summary>
    ProductionTests,

    /// <summary>Everyone who welded, tested or signed.</summary>
    People,

    /// <summary>Instruments.</summary>
    Instruments,

    /// <summary>Qualification records of procedures.</summary>
    Qualifications,

    /// <summary>Designs of tools.</summary>
    ToolDesigns,

    /// <summary>Certificates of people.</summary>
    Certificates,

    /// <summary>Calibrations of instruments.</summary>
    Calibrations,

    /// <summary>Test pieces of a qualification.</summary>
    TestPieces,

    /// <summary>Results of specimens of a qualification.</summary>
    Specimens,
}

/// <summary>Words and order of the groups.</summary>
public static class GenealogyGroups
{
    /// <summary>The groups in the order in which they are listed.</summary>
    public static IReadOnlyList<GenealogyGroup> All { get; } = Enum.GetValues<GenealogyGroup>();

    /// <summary>Number of columns in which the groups stand side by side.</summary>
    public const int Columns = 8;

    /// <summary>Column of a group, from 0: what went in stands left of what came of it, and what it rests on stands right.</summary>
    public static int ColumnOf(GenealogyGroup group) =>
        group switch
        {
            GenealogyGroup.MaterialLots or GenealogyGroup.HeatTreatments => 0,
            GenealogyGroup.Parts => 1,
            GenealogyGroup.Vessel => 2,
            <= GenealogyGroup.Laboratory => 3,
            <= GenealogyGroup.SignOffs => 4,
            <= GenealogyGroup.Instruments => 5,
            <= GenealogyGroup.Calibrations => 6,
            _ => 7,
        };

    /// <summary>Heading of a group.</summary>
    public static string Word(GenealogyGroup group) =>
        group switch
        {
            GenealogyGroup.MaterialLots => "Material lots",
            GenealogyGroup.HeatTreatments => "Heat treatments",
            GenealogyGroup.Parts => "Components",
            GenealogyGroup.Vessel => "Vessel",
            GenealogyGroup.Preparation => "Preparation",
            GenealogyGroup.Runs => "Weld runs",
            GenealogyGroup.Tests => "Tests and examinations",
            GenealogyGroup.Laboratory => "Laboratory tests",
            GenealogyGroup.Findings => "Findings",
            GenealogyGroup.Concessions => "Concessions",
            GenealogyGroup.SignalReviews => "Reviews of signals across runs",
            GenealogyGroup.SignOffs => "Signed-off steps",
            GenealogyGroup.Procedures => "Procedures",
            GenealogyGroup.Tools => "Tools",
            GenealogyGroup.Machines => "Machines",
            GenealogyGroup.ProductionTests => "Production tests",
            GenealogyGroup.People => "People",
            GenealogyGroup.Instruments => "Instruments",
            GenealogyGroup.Qualifications => "Qualifications",
            GenealogyGroup.ToolDesigns => "Tool designs",
            GenealogyGroup.Certificates => "Certificates",
            GenealogyGroup.Calibrations => "Calibrations",
            GenealogyGroup.TestPieces => "Test pieces",
            GenealogyGroup.Specimens => "Specimen results",
            _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Unknown group."),
        };
}

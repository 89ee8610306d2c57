using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Qualification;

/// <summary>Which end of the heat input a test piece is welded at (NASA-STD-5006A w/Change 2 GWR 55).</summary>
public enum HeatEnd
{
    /// <summary>Least spindle speed, greatest travel speed.</summary>
    Lowest,

    /// <summary>Greatest spindle speed, least travel speed.</summary>
    Highest,

    /// <summary>The windows have no width, so there is one heat input.</summary>
    Only,
}

/// <summary>Words of a plan.</summary>
public static class PlanWords
{
    /// <summary>The words for an end of the heat input.</summary>
    public static string Of(HeatEnd heat) =>
        heat switch
        {
            HeatEnd.Lowest => "lowest heat input",
            HeatEnd.Highest => "highest heat input",
            HeatEnd.Only => "the only heat input",
            _ => throw new ArgumentOutOfRangeException(nameof(heat), heat, "Unknown end."),
        };

    /// <summary>The settings of a piece in one line.</summary>
    public static string Of(PlannedPiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return string.Join(
            ", ",
            piece.Settings.Select(s =>
                FormattableString.Invariant(
                    $"{ParameterNames.Of(s.Parameter).ToLowerInvariant()} {s.Value} {s.Unit}"
                )
            )
        );
    }
}

/// <summary>What a parameter is set to for a test piece.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="Value">Value to set, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of the procedure's window.</param>
public sealed record PieceSetting(WeldParameter Parameter, decimal Value, string Unit)
{
    /// <summary>The value in the coherent SI unit.</summary>
    public double ValueSi => ParameterUnits.ToSi(Parameter, Value, Unit);
}

/// <summary>A test piece that the plan asks for.</summary>
/// <param name="Mark">1, 2, ...</param>
/// <param name="Heat">End of the heat input.</param>
/// <param name="Settings">Spindle and travel speed to set; all else at its set point.</param>
public sealed record PlannedPiece(string Mark, HeatEnd Heat, IReadOnlyList<PieceSetting> Settings)
{
    /// <summary>The procedure as this piece is welded and judged: spindle and travel speed at the planned settings.</summary>
    public ProcedureContent Of(ProcedureContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return content with { Windows = [.. content.Windows.Select(Narrow)] };
    }

    /// <summary>What a parameter is set to; null when it stays at the procedure's set point.</summary>
    public PieceSetting? Of(WeldParameter parameter) =>
        Settings.FirstOrDefault(s => s.Parameter == parameter);

    private ParameterWindow Narrow(ParameterWindow window)
    {
        const decimal tolerance = (decimal)TestPieceRules.SettingTolerance;
        return Of(window.Parameter) is { } setting
            ? window with
            {
                SetPoint = setting.Value,
                Lower = setting.Value * (1 - tolerance),
                Upper = setting.Value * (1 + tolerance),
            }
            : window;
    }
}

/// <summary>A test that the plan asks for.</summary>
/// <param name="Id">Mark of the specimen, for instance <c>1-T1</c>.</param>
/// <param name="PieceMark">Test piece.</param>
/// <param name="Kind">Test.</param>
/// <param name="FromMillimetres">Where the specimen begins, in mm from the start of the weld.</param>
/// <param name="ToMillimetres">Where it ends, in mm from the start of the weld.</param>
public sealed record PlannedTest(
    string Id,
    string PieceMark,
    TestKind Kind,
    int FromMillimetres,
    int ToMillimetres
)
{
    /// <summary>The place on the weld in words.</summary>
    public string Place =>
        FormattableString.Invariant(
            $"{FromMillimetres} to {ToMillimetres} mm from the start of the weld"
        );
}

/// <summary>Largest bend former, with how it was found.</summary>
/// <param name="Millimetres">Largest diameter, in mm.</param>
/// <param name="Derivation">How it follows, in one sentence.</param>
public sealed record FormerRequirement(decimal Millimetres, string Derivation)
{
    /// <summary>Multiple of the specimen's thickness by the table; null when it follows otherwise.</summary>
    public decimal? TimesThickness { get; init; }

    /// <summary>Least elongation of the parent in % that it follows from; null when it follows otherwise.</summary>
    public decimal? ElongationPercent { get; init; }
}

/// <summary>Everything that a qualification needs before it is complete.</summary>
/// <param name="Pieces">Test pieces.</param>
/// <param name="Tests">Tests with the places of their specimens.</param>
/// <param name="PieceLength">Length of each weld.</param>
/// <param name="Discard">Length at both ends that no specimen is taken from.</param>
/// <param name="Tensile">Tensile requirement; null when no tensile test is planned.</param>
/// <param name="Former">Largest former; null when no bend test is planned.</param>
/// <param name="BendCrack">Greatest crack on a bend specimen's tension face, in mm; null when no bend test is planned.</param>
/// <param name="Tables">Tables that it was computed by, and by which results are judged.</param>
public sealed record QualificationPlan(
    IReadOnlyList<PlannedPiece> Pieces,
    IReadOnlyList<PlannedTest> Tests,
    Length PieceLength,
    Length Discard,
    TensileRequirement? Tensile,
    FormerRequirement? Former,
    decimal? BendCrack,
    IReadOnlyList<LimitReference> Tables
)
{
    /// <summary>Tables whose edition nobody had compared with the site's own copy.</summary>
    public IReadOnlyList<LimitReference> Unchecked => [.. Tables.Where(t => !t.WasChecked)];
}

/// <summary>What the engineer chooses for a plan.</summary>
/// <param name="SeveralPasses">Whether the joint is welded in several passes.</param>
/// <param name="PieceLength">Length of each weld; above zero.</param>
/// <param name="Discard">Length at both ends that no specimen is taken from; zero or more.</param>
/// <param name="Volumetric">Method for volumetric tests: radiographic or ultrasonic.</param>
/// <param name="Extra">Tests that the design asks for beyond the table, for instance leak or hardness.</param>
/// <param name="Tensile">What is known of the parents' strength.</param>
/// <param name="Elongation">Least elongation of the parent in %, where the former follows from it.</param>
/// <param name="DesignFormer">Former of the design specification in mm, where the table has none.</param>
/// <param name="DesignFormerDocument">That specification with its clause.</param>
public sealed record PlanRequest(
    bool SeveralPasses,
    Length PieceLength,
    Length Discard,
    TestKind Volumetric,
    IReadOnlyList<TestKind> Extra,
    TensileBasis Tensile,
    Measured? Elongation,
    Measured? DesignFormer,
    string? DesignFormerDocument
);

/// <summary>The editions of tables that a plan is computed by.</summary>
/// <param name="Groups">Material groups.</param>
/// <param name="Extent">Extent of testing.</param>
/// <param name="Tensile">Tensile factors.</param>
/// <param name="Bend">Bend formers.</param>
/// <param name="Imperfections">Imperfection limits.</param>
/// <param name="Range">Rule set of the range.</param>
public sealed record PlanTables(
    LimitTable Groups,
    LimitTable Extent,
    LimitTable Tensile,
    LimitTable Bend,
    LimitTable Imperfections,
    LimitTable Range
)
{
    /// <summary>All of them.</summary>
    public IReadOnlyList<LimitTable> All => [Groups, Extent, Tensile, Bend, Imperfections, Range];
}

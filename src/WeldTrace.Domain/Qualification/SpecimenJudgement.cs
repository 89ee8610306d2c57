using System.Globalization;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using Written = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Qualification;

/// <summary>A verdict with its sentence.</summary>
internal sealed record JudgedSpecimen(Verdict Verdict, string Sentence)
{
    public static JudgedSpecimen Worst(IReadOnlyList<JudgedSpecimen> parts) =>
        new(
            Verdicts.Worst(parts.Select(p => p.Verdict)),
            string.Join(" ", parts.Select(p => p.Sentence))
        );
}

/// <summary>Judges what was measured against the limits of the plan.</summary>
internal static class SpecimenJudgement
{
    private static readonly WrittenLimit FullBend = WrittenLimit.Of(180, "°");

    /// <summary>The judged entry; null when the entry is refused.</summary>
    public static JudgedSpecimen? Of(Checks checks, SpecimenFacts facts, SpecimenEntry entry) =>
        (facts.Planned.Kind, entry) switch
        {
            (TestKind.TransverseTensile, { Tensile: { } tensile }) => Tensile(
                checks,
                facts.Qualification.Plan.Tensile!,
                tensile
            ),
            (TestKind.RootBend or TestKind.FaceBend or TestKind.SideBend, { Bend: { } bend }) =>
                Bend(checks, BendRequirement.Of(facts.Qualification.Plan), bend),
            (TestKind.Hardness or TestKind.Leak, { Value: { } value }) => Value(checks, value),
            (_, { Examination: { } examination }) => Examination(checks, facts, examination),
            _ => throw new ArgumentException(
                $"The entry doesn't fit a {facts.Planned.Kind} test.",
                nameof(entry)
            ),
        };

    /// <summary>The judged strength of a flat specimen, with its expanded uncertainty in MPa, k = 2, where it is known.</summary>
    public static JudgedSpecimen? Tensile(
        Checks checks,
        TensileRequirement required,
        TensileEntry entry,
        double? expandedMegapascals = null
    )
    {
        Positive(checks, entry.Width, "width", nameof(entry.Width));
        Positive(checks, entry.Thickness, "thickness", nameof(entry.Thickness));
        Positive(checks, entry.Force, "highest force", nameof(entry.Force));
        checks.That(
            entry.Place != FracturePlace.Unknown,
            "fracture",
            "Say where the specimen broke; the report needs it.",
            nameof(entry.Place),
            "ISO 4136:2012"
        );
        if (!checks.AllHold)
        {
            return null;
        }

        var judged = Comparison.AtLeast(
            new(entry.Specimen.Strength.Megapascals, "MPa", expandedMegapascals),
            WrittenLimit.Of(required.Megapascals, "MPa")
        );
        return new JudgedSpecimen(
            judged.Verdict,
            $"Tensile strength {judged.Sentence} Limit: {required.Derivation}."
        );
    }

    /// <summary>The judged bend of a specimen.</summary>
    public static JudgedSpecimen? Bend(Checks checks, BendRequirement required, BendEntry entry)
    {
        Positive(checks, entry.Former, "diameter of the former", nameof(entry.Former));
        Positive(checks, entry.Angle, "angle", nameof(entry.Angle));
        NotNegative(checks, entry.LongestCrack, "longest crack", nameof(entry.LongestCrack));
        checks.That(
            entry.Former.InUnit() <= (double)required.FormerMillimetres,
            "former",
            FormattableString.Invariant(
                $"A former of {entry.Former} is larger than the {required.FormerMillimetres} mm allowed ({required.Derivation}); bend over a smaller one."
            ),
            nameof(entry.Former)
        );
        return checks.AllHold
            ? JudgedSpecimen.Worst([
                Judged("Bend angle", Comparison.AtLeast(Value(entry.Angle), FullBend)),
                Judged(
                    "Longest crack",
                    Comparison.AtMost(
                        Value(entry.LongestCrack),
                        WrittenLimit.Of(required.CrackMillimetres, "mm")
                    )
                ),
            ])
            : null;
    }

    private static JudgedSpecimen? Examination(
        Checks checks,
        SpecimenFacts facts,
        ExaminationEntry entry
    )
    {
        checks.Text(
            entry.Findings,
            SpecimenTest.LongestText,
            "Say what was seen, or none",
            nameof(entry.Findings)
        );
        List<JudgedSpecimen> parts =
        [
            new(
                entry.IsAcceptable ? Verdict.Pass : Verdict.Fail,
                entry.IsAcceptable
                    ? $"Acceptable: {entry.Findings.Trim()}."
                    : $"Not acceptable: {entry.Findings.Trim()}."
            ),
        ];
        for (var i = 0; i < entry.Imperfections.Count; i++)
        {
            if (Imperfection(checks, facts, entry.Imperfections[i], i) is { } part)
            {
                parts.Add(part);
            }
        }

        return checks.AllHold ? JudgedSpecimen.Worst(parts) : null;
    }

    private static JudgedSpecimen? Imperfection(
        Checks checks,
        SpecimenFacts facts,
        SizedImperfection imperfection,
        int row
    )
    {
        var place = FormattableString.Invariant($"Imperfections[{row}]");
        var table = facts.Imperfections;
        var limit = ImperfectionJudgement.LimitFor(
            table,
            imperfection.Name,
            facts.Content.Thickness,
            imperfection.DesignLimit,
            null
        );
        checks
            .Text(imperfection.Name, 80, "Name the imperfection", place + ".Name")
            .That(
                limit is not null,
                "no-limit",
                $"{table.Label} has no limit for {imperfection.Name}; give that of the design specification.",
                place + ".DesignLimit",
                table.Text.Source.ToString()
            );
        NotNegative(checks, imperfection.Size, "size", place + ".Size");
        if (limit is null || !checks.AllHold)
        {
            return null;
        }

        var (verdict, sentence) = ImperfectionJudgement.Judge(imperfection.Size, null, limit);
        var name = char.ToUpperInvariant(imperfection.Name[0]) + imperfection.Name[1..];
        return new JudgedSpecimen(verdict, $"{name} {sentence}");
    }

    /// <summary>The judged single value, for instance the least hardness.</summary>
    public static JudgedSpecimen? Value(Checks checks, ValueEntry entry)
    {
        checks
            .That(
                entry.AtLeast is null || entry.AtMost is null,
                "limits",
                "Give a least or a greatest value, not both.",
                nameof(entry.AtMost)
            )
            .That(
                entry.Series.Length <= SpecimenTest.LongestText,
                "series",
                $"Keep the single values within {SpecimenTest.LongestText} characters; hand in the report for more.",
                nameof(entry.Series)
            );
        if (!checks.AllHold)
        {
            return null;
        }

        // Units such as HV are outside the catalogue, so the plain numbers are compared; value and limit are typed in one unit.
        var value = new Engineering.Conformity.Measured(entry.Value.InUnit(), "");
        return (Number(entry.AtLeast), Number(entry.AtMost)) switch
        {
            ({ } least, _) => new(
                Comparison.AtLeast(value, WrittenLimit.Of(least, "")).Verdict,
                $"{entry.Value}, at least {entry.AtLeast}."
            ),
            (_, { } most) => new(
                Comparison.AtMost(value, WrittenLimit.Of(most, "")).Verdict,
                $"{entry.Value}, at most {entry.AtMost}."
            ),
            // The acceptance standard asks for the value only; it is on record and passes.
            _ => new(Verdict.Pass, $"{entry.Value}, recorded without a limit."),
        };
    }

    private static JudgedSpecimen Judged(string what, Judgement judgement) =>
        new(judgement.Verdict, $"{what} {judgement.Sentence}");

    private static Engineering.Conformity.Measured Value(Written measured) =>
        new(measured.InUnit(), measured.Unit);

    private static decimal? Number(Written? measured) =>
        measured is null ? null : decimal.Parse(measured.Digits, CultureInfo.InvariantCulture);

    private static void Positive(Checks checks, Written value, string what, string field) =>
        checks.That(value.InUnit() > 0, "positive", $"Give the {what}, above zero.", field);

    private static void NotNegative(Checks checks, Written value, string what, string field) =>
        checks.That(value.InUnit() >= 0, "negative", $"Give the {what}, zero or more.", field);
}

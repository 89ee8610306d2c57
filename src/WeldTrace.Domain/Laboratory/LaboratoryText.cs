using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Domain.Laboratory;

/// <summary>A laboratory test in labels and values as read and printed.</summary>
public static class LaboratoryText
{
    /// <summary>What was tested and how.</summary>
    public static IReadOnlyList<(string Label, string Value)> Of(LaboratoryTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        var (subject, header) = (test.Subject, test.Header);
        var days = header.TestedOn.DayNumber - subject.WeldedOn.DayNumber;
        List<(string, string)> lines =
        [
            ("Vessel", subject.VesselSerial ?? ""),
            ("Production lot", test.ProductionLot),
            ("Joint", subject.JointCode),
            ("Sample", subject.Sample),
            ("Place on the weld", subject.Place),
            ("Procedure", subject.Procedure),
            ("Method", $"{header.Method}, {header.MethodEdition}"),
            ("Acceptance", $"{header.Acceptance}, {header.AcceptanceEdition}"),
            ("Written procedure", header.WrittenProcedure),
            (
                "Tested",
                FormattableString.Invariant(
                    $"{header.TestedOn:yyyy-MM-dd}, {days} days after welding"
                )
            ),
            ("Tested by", test.TesterName),
            .. Conditions(test.Entry),
            ("Remark", header.Remark),
        ];
        return [.. lines.Where(l => l.Item2.Length > 0)];
    }

    /// <summary>Heads of the table of specimens or indentations.</summary>
    public static IReadOnlyList<string> Columns(LaboratoryEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry switch
        {
            { Tensile: not null } =>
            [
                "Specimen",
                "Width, mm",
                "Thickness, mm",
                "Highest force, kN",
                "Broke in",
                "Side",
            ],
            { Bend: not null } =>
            [
                "Specimen",
                "Width, mm",
                "Thickness, mm",
                "Former, mm",
                "Angle, °",
                "Longest crack, mm",
                "Seen",
            ],
            _ => ["Distance from the centre, mm", "Side", "Hardness, HV"],
        };
    }

    /// <summary>Rows of the table of specimens or indentations.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Rows(LaboratoryEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry switch
        {
            { Tensile: { } tensile } =>
            [
                .. tensile.Specimens.Select(r =>
                    (IReadOnlyList<string>)
                        [
                            r.Mark,
                            r.Entry.Width.Digits,
                            r.Entry.Thickness.Digits,
                            r.Entry.Force.Digits,
                            SpecimenText.Of(r.Entry.Place),
                            Side(r.Side),
                        ]
                ),
            ],
            { Bend: { } bend } =>
            [
                .. bend.Specimens.Select(r =>
                    (IReadOnlyList<string>)
                        [
                            r.Mark,
                            r.Width.Digits,
                            r.Thickness.Digits,
                            r.Entry.Former.Digits,
                            r.Entry.Angle.Digits,
                            r.Entry.LongestCrack.Digits,
                            r.Seen,
                        ]
                ),
            ],
            _ =>
            [
                .. (entry.Hardness?.Points ?? []).Select(p =>
                    (IReadOnlyList<string>)
                        [p.Position.Digits, SideAt(p.Position.InUnit()), p.Hardness.Digits]
                ),
            ],
        };
    }

    private static IEnumerable<(string, string)> Conditions(LaboratoryEntry entry)
    {
        if (entry.Tensile is { } tensile)
        {
            yield return (
                "Least strength",
                FormattableString.Invariant(
                    $"{tensile.Required.Megapascals} MPa, {tensile.Required.Derivation}"
                )
            );
            yield return (
                "Parent",
                $"{tensile.Parent}, {(tensile.Reference == ParentReference.SamePlate ? "measured on the same plate" : "minimum of the material standard")}"
            );
            yield return (
                "Standard uncertainties",
                $"force {tensile.ForceUncertainty}, width and thickness {tensile.SizeUncertainty}"
            );
        }

        if (entry.Bend is { } bend)
        {
            yield return (
                "Former",
                FormattableString.Invariant(
                    $"at most {bend.Required.FormerMillimetres} mm, {bend.Required.Derivation}; crack at most {bend.Required.CrackMillimetres} mm"
                )
            );
            yield return ("Distance of the rollers", bend.RollerGap.ToString());
        }

        if (entry.Hardness is { } hardness)
        {
            yield return ("Scale and dwell", $"{hardness.Scale}, {hardness.DwellSeconds}");
            yield return ("Row", $"{hardness.Depth} from the surface");
            yield return ("Hardness of the parent", hardness.Parent.ToString());
            yield return ("Least hardness", hardness.AtLeast?.ToString() ?? "values only");
            yield return ("Reference block", hardness.Block);
        }
    }

    private static string Side(WeldSide? side) =>
        side switch
        {
            WeldSide.Advancing => "advancing",
            WeldSide.Retreating => "retreating",
            _ => "middle or parent",
        };

    private static string SideAt(double position) =>
        Side(
            position < 0 ? WeldSide.Advancing
            : position > 0 ? WeldSide.Retreating
            : null
        );
}

using WeldTrace.Domain.Qualification;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Laboratory tests with invented readings that pass.</summary>
internal static class LaboratoryForms
{
    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "EnterLaboratory laboratory",
            "inspector",
            Routes.EnterLaboratoryOf(nameof(TestKind.Hardness), "NR10-0003"),
            ("In.Sample", "P9"),
            ("In.Place", "20 to 60 mm from the start"),
            ("In.WeldedOn", FormTable.Today),
            ("In.TestedOn", FormTable.Today),
            ("In.MethodEdition", "2001"),
            ("In.Acceptance", "Design specification DS-10"),
            ("In.AcceptanceEdition", "revision B"),
            ("In.Instrument", "HT-01"),
            ("In.Scale", "HV 5"),
            ("In.Dwell", "12"),
            ("In.Depth", "2.0"),
            ("In.Parent", "108"),
            ("In.Required", "60"),
            ("In.Block", "block 112"),
            ("In.Points", "-8 100\n0 80\n8 101")
        ),
    ];
}

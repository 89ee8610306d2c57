using System.Globalization;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Who may send which form, in an order in which all of them can be sent in the demonstration.</summary>
internal static class FormTable
{
    public const string Working = "operator engineer inspector quality";
    public const string Bench = "inspector engineer quality";
    public const string Office = "engineer quality";

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        .. PeopleForms.Rows,
        .. EquipmentForms.Rows,
        .. MaterialForms.Rows,
        .. ToolForms.Rows,
        .. ProcedureForms.Rows,
        .. QualificationForms.Rows,
        .. WeldForms.Rows,
        .. TestForms.Rows,
        .. LotForms.Rows,
        .. LaboratoryForms.Rows,
    ];

    public static string Today => In(0);

    /// <summary>The day after so many days, as a date field sends it.</summary>
    public static string In(int days) =>
        TimeProvider
            .System.GetUtcNow()
            .AddDays(days)
            .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Reading;

/// <summary>Inspection documents in words, for choices.</summary>
public static class InspectionDocumentWords
{
    public static string Of(InspectionDocumentType type) =>
        InspectionDocuments.Word(type)
        + type switch
        {
            InspectionDocumentType.Type21 => ": declaration of compliance",
            InspectionDocumentType.Type22 => ": report of non-specific tests",
            InspectionDocumentType.Type31 => ": certificate of specific inspection",
            InspectionDocumentType.Type32 =>
                ": the same, validated by the purchaser or an official too",
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, null),
        };

    /// <summary>Choices for the weakest document permitted, none first.</summary>
    public static IReadOnlyList<FieldOption> Required { get; } =
    [
        new("", "none asked for"),
        .. Enum.GetValues<InspectionDocumentType>()
            .Select(t => new FieldOption(t.ToString(), Of(t))),
    ];

    /// <summary>The chosen type; null for none, or for what is no choice.</summary>
    public static InspectionDocumentType? Read(string? choice) =>
        Enum.TryParse<InspectionDocumentType>(choice, out var type) && Enum.IsDefined(type)
            ? type
            : null;
}

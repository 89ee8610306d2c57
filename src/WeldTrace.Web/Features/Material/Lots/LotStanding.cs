using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Material.Lots;

/// <summary>How the documents of a lot stand, as a word with a shape.</summary>
public static class LotStanding
{
    public static (Mark Mark, string Word) Of(MaterialLot lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return lot switch
        {
            { Document: null } => (Mark.Waiting, "not filed"),
            { Results.Misses: true } => (Mark.Failed, "below a minimum"),
            { Document: { FileSha256: null, Type: var type } } => (
                Mark.Warning,
                $"{InspectionDocuments.Word(type)}, not scanned in"
            ),
            { Results: null, Document.Type: var type } when InspectionDocuments.IsSpecific(type) =>
                (Mark.Warning, $"{InspectionDocuments.Word(type)}, results not entered"),
            { Document.Type: var type } => (
                Mark.Passed,
                $"{InspectionDocuments.Word(type)} on file"
            ),
        };
    }
}

using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>Title, identity of the vessel, QR code, cautions.</summary>
internal static class TravelerHead
{
    public static IEnumerable<Block> Blocks(TravelerModel model)
    {
        var vessel = model.Vessel;
        GridItem[] identity =
        [
            new("Serial", vessel.Serial),
            GridItem.Of("State", vessel.State),
            new("Design", vessel.Design),
            new("Design revision", vessel.DesignRevision),
            new("Production lot", vessel.ProductionLot),
            .. vessel.Particulars.Select(GridItem.Of),
        ];
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading($"Vessel traveler {vessel.Serial}", 1),
            Grid.Of(identity, pairs: 1),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        yield return new Paragraph(
            $"All times are local to {model.Stamp.TimeZone.Id}."
                + " A record that is struck through was corrected; the reason stands below it.",
            Styles.Note
        );
        yield return Cautions.ForVessel();
        foreach (var notice in UncheckedNotice.Of(model.UncheckedLimits))
        {
            yield return notice;
        }
    }
}

using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Features.Laboratory;

/// <summary>Plots of laboratory tests, the same on screen and paper.</summary>
internal static class LaboratoryPlots
{
    public static XyPlot Of(HardnessSeries series) =>
        HardnessPlot.Of(
            [
                .. series.Points.Select(p => new HardnessPoint(
                    Length.FromMillimetres(p.Position.InUnit()),
                    p.Hardness.InUnit()
                )),
            ],
            series.Parent.InUnit(),
            series.AtLeast?.InUnit()
        );
}

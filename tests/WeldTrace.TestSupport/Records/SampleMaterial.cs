using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;

namespace WeldTrace.TestSupport.Records;

public static class SampleMaterial
{
    /// <summary>Minima of 6061-T6 as shipped: Rm 262.0 MPa, Rp0.2 241.3 MPa, A 14 % (49 CFR 178.46 table 2).</summary>
    public static LimitTable Minima() =>
        ShippedLimits
            .Missing([], SamplePeople.QualityManager, SampleTime.Start)
            .Single(t => t.Code == ShippedLimits.Minima);

    /// <summary>A lot of 6061-T6 with a scanned document 3.1 whose results meet <see cref="Minima"/>.</summary>
    public static MaterialLot Lot(string number = "ML-118")
    {
        var lot = Bare(number);
        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type31,
                "ASTM B241",
                SamplePapers.CertificateSha256,
                SamplePeople.Inspector,
                SampleTime.Start
            ),
            lot.RecordResults(
                Values("295", "268", "15"),
                Minima(),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        return lot;
    }

    /// <summary>A lot as it was entered before documents and results were kept.</summary>
    public static MaterialLot Bare(
        string number = "ML-118",
        string alloy = "6061",
        string temper = "T6"
    ) =>
        Accept.Value(
            MaterialLot.Enter(
                number,
                alloy,
                temper,
                "C-40912",
                "extruded tube",
                "3.1-55120",
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    public static MaterialValues Values(string? ultimate, string? proof, string? elongation) =>
        new(Of(ultimate, "MPa"), Of(proof, "MPa"), Of(elongation, "%"), null);

    public static CutComponent Component(MaterialLot lot, string serial = "S-0001") =>
        Accept.Value(
            CutComponent.Enter(
                serial,
                "shell",
                lot,
                "own turning shop",
                SampleTime.Day,
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

    private static Measured? Of(string? digits, string unit) =>
        digits is null ? null : new Measured(digits, unit);
}

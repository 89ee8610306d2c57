using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>The numbers of a decay test in SI units.</summary>
internal sealed record DecayEstimate(
    double Reference,
    double Rate,
    double Uncompensated,
    double CorrectedFinalPressure,
    double Uncertainty,
    double UncertaintyAtZero,
    double? FitUncertainty
)
{
    public static DecayEstimate Of(DecayTest test)
    {
        var twoPoint = TwoPoint(test);
        return test.Method == DecayMethod.TwoPoint ? twoPoint : LeastSquares(test, twoPoint);
    }

    private static DecayEstimate TwoPoint(DecayTest test)
    {
        var (first, last) = (test.Readings[0], test.Readings[^1]);
        var (p1, t1) = (first.AbsolutePressure.Pascals, first.GasTemperature.Kelvin);
        var (p2, t2) = (last.AbsolutePressure.Pascals, last.GasTemperature.Kelvin);
        var (volume, seconds) = (test.Volume.CubicMetres, (last.Time - first.Time).TotalSeconds);
        var reference = test.Reference?.Kelvin ?? t1;
        var rate = volume * reference * ((p1 / t1) - (p2 / t2)) / seconds;

        var scale = volume * reference / seconds;
        var u = test.Uncertainty;
        var slopeOfT1 = test.Reference is null ? p2 / (t2 * reference) : p1 / (t1 * t1);
        var uncertainty = Combine(
            rate / volume * u.Volume.CubicMetres,
            scale / t1 * u.Pressure.Pascals,
            scale / t2 * u.Pressure.Pascals,
            scale * slopeOfT1 * u.TemperatureKelvin,
            scale * p2 / (t2 * t2) * u.TemperatureKelvin,
            rate / seconds * u.Duration.TotalSeconds
        );
        var atZero = DecaySensitivity.UncertaintyAtZero(
            volume,
            p1,
            t1,
            seconds,
            u.Pressure.Pascals,
            u.TemperatureKelvin
        );
        return new(
            reference,
            rate,
            volume * (p1 - p2) / seconds,
            p2 * t1 / t2,
            uncertainty,
            atZero,
            null
        );
    }

    private static DecayEstimate LeastSquares(DecayTest test, DecayEstimate twoPoint)
    {
        var points = test
            .Readings.Select(r =>
                (
                    X: r.Time.TotalSeconds,
                    Y: r.AbsolutePressure.Pascals * twoPoint.Reference / r.GasTemperature.Kelvin
                )
            )
            .ToArray();
        var (meanX, meanY) = (points.Average(p => p.X), points.Average(p => p.Y));
        var spread = points.Sum(p => (p.X - meanX) * (p.X - meanX));
        var slope = points.Sum(p => (p.X - meanX) * (p.Y - meanY)) / spread;
        var squares = points.Sum(p => Math.Pow(p.Y - meanY - (slope * (p.X - meanX)), 2));

        var volume = test.Volume.CubicMetres;
        var fit = volume * Math.Sqrt(squares / (points.Length - 2) / spread);
        var atZero = Math.Max(fit, volume * ReadingUncertainty(test) / Math.Sqrt(spread));
        var rate = -volume * slope;
        var seconds = points[^1].X - points[0].X;
        var uncertainty = Combine(
            atZero,
            rate / volume * test.Uncertainty.Volume.CubicMetres,
            rate / seconds * test.Uncertainty.Duration.TotalSeconds
        );
        return twoPoint with
        {
            Rate = rate,
            Uncertainty = uncertainty,
            UncertaintyAtZero = atZero,
            FitUncertainty = fit,
        };
    }

    private static double ReadingUncertainty(DecayTest test)
    {
        var first = test.Readings[0];
        var relative = test.Uncertainty.TemperatureKelvin / first.GasTemperature.Kelvin;
        return Combine(
            test.Uncertainty.Pressure.Pascals,
            first.AbsolutePressure.Pascals * relative
        );
    }
}

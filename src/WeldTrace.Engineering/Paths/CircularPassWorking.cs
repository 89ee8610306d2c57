namespace WeldTrace.Engineering.Paths;

internal static class CircularPassWorking
{
    public static Working Show(CircularPassLayout layout)
    {
        var pass = layout.Pass;
        var coversCentre = pass.ShoulderDiameter.Metres / 2 >= pass.TrackRadius.Metres;
        return Inputs(pass)
            .Step("s_ov", "overlap length", layout.OverlapLength.Millimetres, "mm")
            .Step("t_plunge", "plunge time", layout.PlungeTime.TotalSeconds, "s")
            .Step("t_retract", "retract time", layout.RetractTime.TotalSeconds, "s")
            .Result("L", "path length", layout.PathLength.Millimetres, "mm")
            .Result("t", "traverse time", layout.TraverseTime.TotalSeconds, "s")
            .Result("t_run", "run time", layout.RunTime.TotalSeconds, "s")
            .Result(
                "Ω",
                "rotary axis speed",
                layout.RotaryAxisSpeed.RevolutionsPerMinute,
                "rev/min"
            )
            .Result(
                "v_in",
                "feed at inner edge",
                layout.FeedAtInnerEdge.MillimetresPerMinute,
                "mm/min"
            )
            .Result(
                "v_out",
                "feed at outer edge",
                layout.FeedAtOuterEdge.MillimetresPerMinute,
                "mm/min"
            )
            .From(
                "Plane geometry; advancing side from (ω × r)·v > 0, terms of ISO 25239-1:2020 (read in a summary)."
            )
            .Validity(
                Validity.When(
                    !coversCentre,
                    "The shoulder radius is smaller than the track radius.",
                    "the shoulder covers the centre, the inner edge runs backwards."
                )
            )
            .Build();
    }

    private static WorkingBuilder Inputs(CircularPass pass) =>
        Working
            .Of(
                $"Layout of circular pass {pass.Number}",
                "L = R·(2π + θ); t = L/v + t_up/2 + t_down/2; t_run = h/v_p + t_1 + t + t_2 + h_r/v_r; Ω = v/R; v_in, v_out = v·(1 ∓ Rs/R)"
            )
            .Input("R", "track radius", pass.TrackRadius.Millimetres, "mm")
            .Input("θ", "overlap angle", pass.OverlapAngle.Degrees, "°")
            .Input("v", "travel speed", pass.TravelSpeed.MillimetresPerMinute, "mm/min")
            .Input("Rs", "shoulder radius", pass.ShoulderDiameter.Millimetres / 2, "mm")
            .Input("h", "plunge depth", pass.PlungeDepth.Millimetres, "mm")
            .Input("v_p", "plunge rate", pass.PlungeRate.MillimetresPerMinute, "mm/min")
            .Input("t_1", "dwell at start", pass.DwellAtStart.TotalSeconds, "s")
            .Input("t_2", "dwell at end", pass.DwellAtEnd.TotalSeconds, "s")
            .Input("t_up", "ramp up", pass.RampUp.TotalSeconds, "s")
            .Input("t_down", "ramp down", pass.RampDown.TotalSeconds, "s")
            .Input("h_r", "retract distance", pass.RetractDistance.Millimetres, "mm")
            .Input("v_r", "retract rate", pass.RetractRate.MillimetresPerMinute, "mm/min");
}

namespace WeldTrace.ProcessLogs;

/// <summary>Turns numbers as logged into SI, without a look at the unit's name for each of them.</summary>
internal readonly record struct SiConversion(double Scale, double OffsetSi)
{
    public double ToSi(double asLogged) => (asLogged * Scale) + OffsetSi;
}

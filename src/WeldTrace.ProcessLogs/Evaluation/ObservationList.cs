namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The first observations of each kind; a broken sensor would else fill pages.</summary>
internal sealed class ObservationList
{
    private const int MostOfAKind = 20;
    private readonly List<LogObservation> _found = [];

    public IReadOnlyList<LogObservation> InOrder =>
        [.. _found.OrderBy(observation => observation.FirstRow)];

    public void Add(LogObservation observation)
    {
        if (_found.Count(known => known.Kind == observation.Kind) < MostOfAKind)
        {
            _found.Add(observation);
        }
    }
}

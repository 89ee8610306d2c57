namespace WeldTrace.ProcessLogs;

/// <summary>Gives the unpacked samples of a log, for its judgement.</summary>
public interface ISampleSource
{
    /// <summary>The samples of a column in a frame; valid until a later frame is asked for.</summary>
    /// <param name="frame">Index of the chunks, from 0; never less than the one before.</param>
    /// <param name="ordinal">The column.</param>
    /// <exception cref="InvalidDataException">The chunk is damaged.</exception>
    SampleBlock Get(int frame, int ordinal);
}

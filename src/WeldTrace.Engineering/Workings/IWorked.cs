namespace WeldTrace.Engineering;

/// <summary>A computed result that can show how it was worked out.</summary>
public interface IWorked
{
    /// <summary>The working of this result.</summary>
    Working Working { get; }
}

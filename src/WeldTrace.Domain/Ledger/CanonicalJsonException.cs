namespace WeldTrace.Domain.Ledger;

/// <summary>The value or text has no canonical JSON form; the message says why.</summary>
public sealed class CanonicalJsonException : FormatException
{
    /// <summary>Makes the exception with a general message.</summary>
    public CanonicalJsonException()
        : base("The text has no canonical JSON form.") { }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">What is wrong.</param>
    public CanonicalJsonException(string message)
        : base(message) { }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="innerException">The error that was met.</param>
    public CanonicalJsonException(string message, Exception innerException)
        : base(message, innerException) { }
}

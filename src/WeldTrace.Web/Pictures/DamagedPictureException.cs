namespace WeldTrace.Web.Pictures;

/// <summary>A picture whose pixels can't be read; the message says why, for people.</summary>
public sealed class DamagedPictureException : Exception
{
    public DamagedPictureException() { }

    public DamagedPictureException(string message)
        : base(message) { }

    public DamagedPictureException(string message, Exception inner)
        : base(message, inner) { }
}

namespace WeldTrace.Persistence.Attachments;

/// <summary>Bytes kept under their own hash; never changed.</summary>
public sealed class Attachment
{
    public required string Sha256 { get; init; }

    public required string MediaType { get; init; }

    public required long Length { get; init; }

    public required byte[] Bytes { get; init; }
}

using WeldTrace.Persistence.Archives;

namespace WeldTrace.Persistence.Attachments;

/// <summary>Bytes kept under their own hash; never changed.</summary>
public sealed class Attachment
{
    public required string Sha256 { get; init; }

    public required string MediaType { get; init; }

    public required long Length { get; init; }

    /// <summary>Empty when the file is archived; read it by <see cref="ArchivedReading.FindAttachmentAsync"/>.</summary>
    public required byte[] Bytes { get; init; }

    /// <summary>The archive whose bundle holds the bytes; null while they are here.</summary>
    public Guid? ArchiveId { get; init; }
}

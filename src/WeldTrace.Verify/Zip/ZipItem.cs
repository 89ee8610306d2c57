namespace WeldTrace.Verify.Zip;

/// <summary>One record of a ZIP's directory.</summary>
internal sealed record ZipItem
{
    private const int EncryptionBits = 0x0001 | 0x0040 | 0x2000;

    public required string Name { get; init; }

    public required int Flags { get; init; }

    public required int Method { get; init; }

    public required long PackedLength { get; init; }

    public required long Length { get; init; }

    public required long HeaderOffset { get; init; }

    public required uint Attributes { get; init; }

    /// <summary>Start of the packed bytes; known after the layout was checked.</summary>
    public long DataOffset { get; init; }

    public bool IsFolder => Name.EndsWith('/');

    public string Path => IsFolder ? Name[..^1] : Name;

    public bool IsEncrypted => (Flags & EncryptionBits) != 0;
}

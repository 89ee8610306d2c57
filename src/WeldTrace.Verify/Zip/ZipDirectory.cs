namespace WeldTrace.Verify.Zip;

/// <summary>Where the directory of a ZIP stands.</summary>
/// <param name="Files">Number of records.</param>
/// <param name="Bytes">Length of all records.</param>
/// <param name="Offset">Start of the first record.</param>
/// <param name="EndsAt">Start of the end record.</param>
internal sealed record ZipDirectory(long Files, long Bytes, long Offset, long EndsAt);

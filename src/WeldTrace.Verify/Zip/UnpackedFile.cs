namespace WeldTrace.Verify.Zip;

/// <summary>One file as it came out of the ZIP.</summary>
/// <param name="Path">Path inside the bundle.</param>
/// <param name="Bytes">True length.</param>
/// <param name="Sha256">Lower-case hexadecimal.</param>
/// <param name="Document">The bytes, if they were asked for.</param>
internal sealed record UnpackedFile(string Path, long Bytes, string Sha256, byte[]? Document);

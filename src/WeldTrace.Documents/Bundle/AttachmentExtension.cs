namespace WeldTrace.Documents.Bundle;

/// <summary>Chooses a harmless file extension; the person's file name never becomes a path.</summary>
internal static class AttachmentExtension
{
    public static string Of(BundledAttachment attachment) =>
        attachment.MediaType switch
        {
            "image/jpeg" => "jpg",
            "image/png" => "png",
            "image/webp" => "webp",
            "image/tiff" => "tif",
            "application/pdf" => "pdf",
            "text/csv" => "csv",
            "application/gzip" => "csv.gz",
            "application/zstd" => "csv.zst",
            "text/plain" => "txt",
            _ => FromName(attachment.FileName),
        };

    private static string FromName(string fileName)
    {
        var extension = Path.GetExtension(fileName).TrimStart('.').ToLowerInvariant();
        var plain = extension.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c));
        return plain && extension.Length is >= 1 and <= 8 ? extension : "bin";
    }
}

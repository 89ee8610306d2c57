using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using SkiaSharp;
using WeldTrace.Benchmarks.Pages;
using WeldTrace.Web.Demo;

namespace WeldTrace.Benchmarks.Pictures;

/// <summary>
/// A photograph of 100 megapixels is taken in through the form, saved, and its page, its whole and tiles of the finest level are
/// fetched. Limits: less than 3 s together, and less than 600 MB for the whole application at its peak.
/// </summary>
internal static partial class PictureIntake
{
    private const int Side = 10_000;
    private const double MostSeconds = 3;
    private const long MostBytes = 600L * 1024 * 1024;
    private const string Step = "/vessels/NR10-0005/section/70";

    public static async Task<int> RunAsync()
    {
        var photograph = Photograph();
        await using var site = DemoSite.Start();
        using var inspector = await site.SignInAsync(DemoPeople.Inspector);
        var form = await FormAsync(inspector, photograph);
        await inspector.GetStringAsync(new Uri("/tests", UriKind.Relative));
        ForgetPeak();

        var before = Environment.CpuUsage.TotalTime;
        var watch = Stopwatch.StartNew();
        using var answer = await inspector.PostAsync(new Uri(Step, UriKind.Relative), form);
        var page = answer.RequestMessage!.RequestUri!;
        if (!page.AbsolutePath.EndsWith("/measure", StringComparison.Ordinal))
        {
            throw new InvalidOperationException(await answer.Content.ReadAsStringAsync());
        }

        var taken = watch.Elapsed;
        var section = page.AbsolutePath[..^"/measure".Length];
        string[] shown =
        [
            "picture.jpg",
            "tiles/5/0/0",
            "tiles/0/9/9",
            "tiles/0/10/9",
            "tiles/0/19/19",
        ];
        foreach (var part in shown)
        {
            (
                await inspector.GetByteArrayAsync(new Uri($"{section}/{part}", UriKind.Relative))
            ).ToString();
        }

        var (seconds, peak) = (watch.Elapsed.TotalSeconds, Peak());
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"100 megapixels, {photograph.Length / 1048576.0:0} MB: taken in after {taken.TotalSeconds:0.00} s, shown after {seconds:0.00} s; processor time {(Environment.CpuUsage.TotalTime - before).TotalSeconds:0.00} s; peak {peak / 1048576.0:0} MB."
            )
        );
        return seconds < MostSeconds && peak < MostBytes ? 0 : 1;
    }

    /// <summary>A drawn picture with grain, so that it packs as badly as a photograph does.</summary>
    private static byte[] Photograph()
    {
        using var bitmap = new SKBitmap(Side, Side, SKColorType.Gray8, SKAlphaType.Opaque);
        var random = new Random(1);
        var row = new byte[Side];
        var pixels = bitmap.GetPixels();
        for (var y = 0; y < Side; y++)
        {
            for (var x = 0; x < Side; x++)
            {
                row[x] = (byte)(((x / 40) + (y / 60) + random.Next(24)) & 0xFF);
            }

            System.Runtime.InteropServices.Marshal.Copy(
                row,
                0,
                pixels + (y * bitmap.RowBytes),
                Side
            );
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 92);
        return data.ToArray();
    }

    private static async Task<MultipartFormDataContent> FormAsync(
        HttpClient inspector,
        byte[] photograph
    )
    {
        var page = await inspector.GetStringAsync(new Uri(Step, UriKind.Relative));
        (string Name, string Value)[] fields =
        [
            ("_handler", "section"),
            ("__RequestVerificationToken", DemoSite.TokenOf(page)),
            ("In.Id", Guid.CreateVersion7().ToString()),
            ("In.Specimen", "M1"),
            ("In.Angle", "120"),
            ("In.Plane", "across the weld"),
            ("In.Scale", "Macroscopic"),
            ("In.Etchant", "Keller's reagent, 20 s"),
            ("In.Magnification", "scale bar 5 mm"),
            ("In.Method", "ISO 17639"),
            ("In.MethodEdition", "2003"),
            ("In.Limits", Table().Match(page).Groups[1].Value),
            ("In.Instrument", "MS-04"),
        ];
        var form = new MultipartFormDataContent();
        foreach (var (name, value) in fields)
        {
            form.Add(new StringContent(value), name);
        }

        form.Add(new ByteArrayContent(photograph), "In.Photograph", "macro.jpg");
        return form;
    }

    // Linux: the peak counts from here again.
    private static void ForgetPeak()
    {
        GC.Collect(2, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        File.WriteAllText("/proc/self/clear_refs", "5");
    }

    private static long Peak() =>
        1024
        * long.Parse(
            PeakLine().Match(File.ReadAllText("/proc/self/status")).Groups[1].Value,
            CultureInfo.InvariantCulture
        );

    [GeneratedRegex(@"VmHWM:\s+([0-9]+) kB")]
    private static partial Regex PeakLine();

    [GeneratedRegex("<option value=\"([0-9a-f-]{36})\"[^>]*>IMPERF")]
    private static partial Regex Table();
}

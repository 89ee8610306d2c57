using System.Text.RegularExpressions;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A section measured on its picture, first by keyboard alone, then by mouse; the picture is drawn.</summary>
public sealed class SectionJourneyTests(SiteFixture site)
{
    private const int Width = 900;
    private const int Height = 420;
    private static readonly byte[] Macro = DemoMacro.Make("NR10-0005").Attachment.Bytes;

    [Fact]
    public async Task Section_MeasuredByKeyboard_ThenByMouse_IsJudgedSignedAndPrinted()
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await TakeInAsync(visitor);
        await ByKeyboardAsync(visitor);
        await visitor.SeesAsync("Withdraw this test");
        await visitor.Page.Locator("details.withdraw summary").ClickAsync();
        await visitor.FillAsync("What was entered wrongly", "the wrong specimen");
        await visitor.SignAsync("Withdraw the test");
        await visitor.SeesAsync("took this test back");

        await TakeInAsync(visitor);
        await ByMouseAsync(visitor);
        await visitor.FindsAccessibleAsync();
        await visitor.SignForGoodAsync("Sign");
        await visitor.SeesAsync("I made this test, and the readings are as recorded.");

        var report = await visitor.DownloadAsync(
            new Uri(visitor.Page.Url).AbsolutePath + "/report.pdf"
        );
        using var pdf = PdfDocument.Open(report);
        var text = string.Join('\n', pdf.GetPages().Select(p => p.Text));
        Assert.Contains("Section of J1, NR10-0005", text, StringComparison.Ordinal);
        Assert.Contains("1, hook", text, StringComparison.Ordinal);
        Assert.Contains("advancing side", text, StringComparison.Ordinal);
        Assert.Contains("MS-04", text, StringComparison.Ordinal);
        Assert.Contains("MA-0113", text, StringComparison.Ordinal);
        Assert.NotEmpty(
            pdf.GetPage(1).GetImages().Concat(pdf.GetPages().Skip(1).SelectMany(p => p.GetImages()))
        );
    }

    private static async Task TakeInAsync(Visitor visitor)
    {
        await visitor.GoToAsync("/vessels/NR10-0005/section/70");
        await visitor.FillAsync("Mark of the specimen", "NR10-0005-M1");
        await visitor.FillAsync("Angle of the cut from the start of the pass", "120");
        await visitor.FillAsync("Etchant and time", "Keller's reagent, 20 s");
        await visitor.FillAsync("Magnification or length of the scale", "scale bar 5 mm");
        await visitor.FillAsync("Its edition", "2003");
        await visitor.FillAsync("Scale checked with", "MS-04");
        await HandInAsync(visitor, "not-a-photo.jpg", "<html>no image</html>"u8.ToArray());
        await visitor.PressAsync("Take in and measure");
        await visitor.SeesAsync("no JPEG, PNG or TIFF photograph");
        await HandInAsync(visitor, "macro.jpg", Macro);
        await visitor.PressAsync("Take in and measure");
        await visitor.Page.ArrivesAtAsync("**/measure");
        await visitor.SeesAsync("The picture has no scale yet");
        await visitor.Page.Locator("[data-picture][data-shown]").WaitForAsync();
        await visitor.FindsAccessibleAsync();
    }

    private static async Task ByKeyboardAsync(Visitor visitor)
    {
        var keys = visitor.Page.Keyboard;
        await PickAsync(visitor, "Ends of the known length");
        await PressAsync(keys, "ArrowLeft", 12);
        await keys.PressAsync("Enter");
        await PressAsync(keys, "ArrowRight", 24);
        await keys.PressAsync("Enter");
        await keys.TypeAsync("8.00");
        await keys.PressAsync("Tab");
        await keys.TypeAsync("0.01");
        await PickAsync(visitor, "Weld face, from its advancing edge to its retreating edge");
        await PressAsync(keys, "ArrowUp", 8);
        await keys.PressAsync("Enter");
        await PressAsync(keys, "ArrowLeft", 24);
        await keys.PressAsync("Enter");
        await visitor.PressAsync("Set the scale");
        await visitor.SeesAsync("µm a pixel");

        await visitor.ChooseAsync("What it is", "NuggetWidth");
        await PickAsync(visitor, "Points");
        await PressAsync(keys, "ArrowDown", 6);
        await keys.PressAsync("Enter");
        await PressAsync(keys, "ArrowRight", 10);
        await keys.PressAsync("Enter");
        await visitor.PressAsync("Record the measurement");
        await visitor.SeesAsync("reported");
        await ConcludeAsync(visitor, "Sound.");
        await visitor.SeesAsync("The section shows no imperfection.");
    }

    private static async Task ByMouseAsync(Visitor visitor)
    {
        await PickAsync(visitor, "Ends of the known length");
        await ClickAsync(visitor, 70, 373);
        await ClickAsync(visitor, 320, 373);
        await FillAsync(visitor, "Known length", "5.00");
        await FillAsync(visitor, "Its standard uncertainty", "0.005");
        await PickAsync(visitor, "Weld face, from its advancing edge to its retreating edge");
        await ClickAsync(visitor, 260, 60);
        await ClickAsync(visitor, 640, 60);
        await visitor.PressAsync("Set the scale");
        await visitor.SeesAsync("µm a pixel");

        await visitor.ChooseAsync("What it is", "Hook");
        await PickAsync(visitor, "Points");
        await ClickAsync(visitor, 384, 240);
        await ClickAsync(visitor, 384, 224);
        await visitor.PressAsync("Record the measurement");
        await visitor.SeesAsync("has no limit for hook");
        await FillAsync(visitor, "Limit of the design", "0.60");
        await FillAsync(visitor, "Design specification with its clause", "DS-10, section 6");
        await visitor.PressAsync("Record the measurement");
        await visitor.SeesAsync("How was measurement 1 worked out?");
        await ConcludeAsync(visitor, "A hook on the advancing side.");
        await visitor.SeesAsync("meets the limit");
    }

    private static async Task ConcludeAsync(Visitor visitor, string seen)
    {
        await visitor.FillAsync("What the whole section shows", seen);
        await visitor.PressAsync("Conclude and go to the signature");
        await visitor.Page.ArrivesAtAsync("**/tests/sections/*-*");
    }

    private static Task FillAsync(Visitor visitor, string label, string value) =>
        visitor
            .Page.GetByLabel(new Regex("^" + Regex.Escape(label) + @"( \(may be left empty\))?$"))
            .FillAsync(value);

    private static async Task PickAsync(Visitor visitor, string field)
    {
        var button = visitor.Page.GetByRole(
            AriaRole.Button,
            new() { Name = $"Set on the picture: {field}", Exact = true }
        );
        await button.FocusAsync();
        await visitor.Page.Keyboard.PressAsync("Enter");
        await visitor.SeesAsync($"Set the points of: {field}.");
    }

    private static async Task PressAsync(IKeyboard keys, string key, int times)
    {
        for (var i = 0; i < times; i++)
        {
            await keys.PressAsync(key);
        }
    }

    /// <summary>Clicks on a pixel of the picture, which stands whole and in the middle of its view.</summary>
    private static async Task ClickAsync(Visitor visitor, int x, int y)
    {
        var box = (await visitor.Page.Locator("[data-picture] canvas").BoundingBoxAsync())!;
        var zoom = Math.Min(box.Width / Width, box.Height / Height);
        await visitor.Page.Mouse.ClickAsync(
            box.X + (box.Width / 2) + ((x - (Width / 2)) * zoom),
            box.Y + (box.Height / 2) + ((y - (Height / 2)) * zoom)
        );
    }

    private static Task HandInAsync(Visitor visitor, string name, byte[] bytes) =>
        visitor
            .Page.GetByLabel("Photograph")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = "image/jpeg",
                    Buffer = bytes,
                }
            );
}

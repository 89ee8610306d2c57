using System.Globalization;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>An inspector enters a sound specimen in the form that is open, whatever test it is for.</summary>
internal static class SpecimenEntering
{
    public static async Task EnterAsync(Visitor inspector, string testMachine, DateOnly today)
    {
        var title = await inspector.Page.Locator("h1").InnerTextAsync();
        await inspector.FillAsync("Its edition", "2024");
        await inspector.FillAsync("Acceptance standard", "Design specification DS-10");
        await inspector.FillAsync("Its edition and level", "section 5");
        await inspector.FillAsync(
            "Tested on",
            today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        await MeasureAsync(inspector, title, testMachine);
        await inspector.SignForGoodAsync("Sign and enter");
        await inspector.SeesAsync("pass");
    }

    private static async Task MeasureAsync(Visitor inspector, string title, string testMachine)
    {
        if (title.EndsWith("tensile", StringComparison.Ordinal))
        {
            // 33 kN on 25 mm x 6 mm: 220 MPa.
            await inspector.FillAsync("Instrument", testMachine);
            await inspector.FillAsync("Smallest width", "25");
            await inspector.FillAsync("Smallest thickness", "6");
            await inspector.FillAsync("Highest force", "33");
            await inspector.ChooseAsync("Where it broke", "HeatAffectedZone");
        }
        else if (title.EndsWith("bend", StringComparison.Ordinal))
        {
            await inspector.FillAsync("Instrument", testMachine);
            await inspector.FillAsync("Diameter of the former", "40");
        }
        else
        {
            if (title.EndsWith("section", StringComparison.Ordinal))
            {
                await inspector.FillAsync("Instrument", "MS-04");
            }

            await inspector.ChooseAsync("Verdict by the acceptance standard", "Acceptable");
            await inspector.FillAsync("What was seen", "Sound, full depth");
        }
    }
}

using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A new procedure from nothing to released, through the pages alone.</summary>
public sealed class QualificationJourneyTests(SiteFixture shared)
{
    private const string Number = "WP-202";
    private const string Record = "WPQR-202-1";
    private const string TestMachine = "TM-07";
    private const double PieceMillimetres = 500;

    [Fact]
    public async Task Procedure_FromNothing_IsQualifiedReleasedAndSelectedForProduction()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        await PrepareTestingAsync(workshop);
        await using var engineer = await workshop.SignInAsync(DemoPeople.Engineer);
        await WriteAsync(engineer);
        var procedure = new Uri(engineer.Page.Url).AbsolutePath;
        await engineer.SignForGoodAsync("Sign: Put on trial");
        await PlanAsync(engineer, procedure);
        var record = new Uri(engineer.Page.Url).AbsolutePath;

        await WeldAsync(workshop, record);
        await TestAsync(workshop, record);
        await engineer.GoToAsync(record);
        await engineer.SeesAsync("every planned result is in and passed");
        await engineer.SignForGoodAsync("Sign the qualification");
        await engineer.SeesAsync("What it covers");
        await engineer.FindsAccessibleAsync();

        await engineer.GoToAsync(procedure);
        await engineer.SignForGoodAsync("Sign: Accept the qualification");
        await using var quality = await workshop.SignInAsync(DemoPeople.QualityManager);
        await quality.GoToAsync(procedure);
        await quality.SignForGoodAsync("Sign: Release for production");
        await quality.SeesAsync("I release this procedure for production.");
        await AssertPapersTellAsync(quality, procedure, record);
        var rule = await ProductionPlanning.PlanAsync(workshop, engineer, quality, Number);
        Assert.Contains("Holds", rule, StringComparison.Ordinal);
        Assert.Contains($"{Number} rev A", rule, StringComparison.Ordinal);
    }

    // Tensile and bend specimens need a calibrated testing machine; the workshop's inspector is certified for them.
    private static async Task PrepareTestingAsync(OwnWorkshop workshop)
    {
        var today = workshop.Clock.Today;
        await using var quality = await workshop.SignInAsync(DemoPeople.QualityManager);
        await quality.GoToAsync("/equipment/instruments/new");
        await quality.FillAsync("Mark on the instrument", TestMachine);
        await quality.ChooseAsync("Measures", "Mechanical");
        await quality.FillAsync("Type and serial number", "Testing machine 100 kN, serial 4410");
        await quality.FillAsync("Unit", "kN");
        await quality.FillAsync("Range from", "0");
        await quality.FillAsync("to", "100");
        await quality.FillAsync("Resolution", "0.01");
        await quality.FillAsync("Largest permitted error", "0.5");
        await quality.FillAsync("Calibrated every", "12");
        await quality.PressAsync("Enter the instrument");
        await quality.FillAsync("Day of the calibration", Show(today.AddDays(-20)));
        await quality.FillAsync("Laboratory", "Fjord calibration room");
        await quality.FillAsync("Number of its certificate", "FC-6001");
        await quality.FillAsync("Largest error found", "0.1");
        await quality.PressAsync("Enter the calibration");
        await quality.SeesAsync("FC-6001");
    }

    private static async Task WriteAsync(Visitor engineer)
    {
        await engineer.GoToAsync("/procedures");
        await engineer.FollowAsync("Write a procedure");
        await engineer.FillAsync("Procedure number", Number);
        await engineer.FillAsync("Title", "Butt weld of shell halves, 6 mm");
        await engineer.FillAsync("Alloy", "6061");
        await engineer.FillAsync("Temper", "T6");
        await engineer.FillAsync("Thickness", "6");
        await engineer.FillAsync("Joint type", "butt");
        await engineer.ChooseAsync("Penetration", "Full");
        await engineer.ChooseAsync("Machine", "Gantry 1");
        await engineer.ChooseAsync("Tool design", "TD-15 rev A");
        await engineer.ChooseAsync("Type of tool", "FixedProbe");
        await engineer.ChooseAsync("Condition after welding", "NaturalAgeing");
        await engineer.FillAsync("Backing material", "Anvil of tool steel");
        await WindowAsync(engineer, "Spindle speed", "800", "770", "830");
        await WindowAsync(engineer, "Travel speed", "200", "220", "180");
        await WindowAsync(engineer, "Axial force", "8", "7", "9.5");
        await engineer.SeesAsync("0.250 mm/rev");
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("Nothing was saved yet");
        await WindowAsync(engineer, "Travel speed", "200", "180", "220");
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("Put on trial");
    }

    private static async Task WindowAsync(
        Visitor engineer,
        string parameter,
        string setPoint,
        string lower,
        string upper
    )
    {
        await engineer.FillAsync($"{parameter}, set point", setPoint);
        await engineer.FillAsync($"{parameter}, lower", lower);
        await engineer.FillAsync($"{parameter}, upper", upper);
        await engineer.Page.GetByLabel($"{parameter}, essential").CheckAsync();
    }

    // 6061-T6 plate: 290 MPa and 10 %, EN 485-2.
    private static async Task PlanAsync(Visitor engineer, string procedure)
    {
        await engineer.GoToAsync(procedure);
        await engineer.FollowAsync("Plan a qualification");
        await engineer.FillAsync("Number of the qualification record", Record);
        await engineer.FillAsync("Minimum of the parent", "290");
        await engineer.FillAsync("Material standard behind it", "EN 485-2");
        await engineer.FillAsync("Least elongation of the parent", "10");
        await engineer.PressAsync("Compute and keep the plan");
        await engineer.Page.ArrivesAtAsync("**/qualifications/*");
        await engineer.SeesAsync("What is missing");
        await engineer.SeesAsync("transverse tensile");
    }

    private static async Task WeldAsync(OwnWorkshop workshop, string record)
    {
        await using var welder = await workshop.SignInAsync(DemoPeople.Operator, 820);
        foreach (
            var (mark, spindle, travel, tool) in new[] { ("1", 770, 220, 1), ("2", 830, 180, 2) }
        )
        {
            await welder.GoToAsync(record);
            await welder.FollowAsync($"Weld piece {mark}");
            await welder.Page.Locator("[name='In.Lots']").First.CheckAsync();
            await welder.ChooseAsync("Machine", "Gantry 1");
            await welder
                .Page.GetByLabel("Tool", new() { Exact = true })
                .SelectOptionAsync(new SelectOptionValue { Index = tool });
            await welder.PressAsync("Begin the piece");
            await welder.SeesAsync("Close the piece with its process log");
            await welder
                .Page.GetByLabel("Process log", new() { Exact = true })
                .SetInputFilesAsync(
                    new FilePayload
                    {
                        Name = $"piece-{mark}.csv",
                        MimeType = "text/csv",
                        Buffer = Log(spindle, travel),
                    }
                );
            await welder.SignForGoodAsync("Sign and close the piece");
            await welder.SeesAsync("samples,");
            await welder.FindsAccessibleAsync();
        }
    }

    private static byte[] Log(int revolutions, int millimetresPerMinute) =>
        Encoding.UTF8.GetBytes(
            new DemoLog(
                new DemoRun
                {
                    TrackRadius = Length.FromMillimetres(PieceMillimetres / (2 * Math.PI)),
                    Overlap = Length.Zero,
                    SpindleSpeed = RotationSpeed.FromRevolutionsPerMinute(revolutions),
                    TravelSpeed = Speed.FromMillimetresPerMinute(millimetresPerMinute),
                    PlungeDepth = Length.FromMillimetres(5.7),
                    SamplesPerSecond = 50,
                }
            ).ToCsv()
        );

    private static async Task TestAsync(OwnWorkshop workshop, string record)
    {
        await using var inspector = await workshop.SignInAsync(DemoPeople.Inspector);
        await inspector.GoToAsync(record);
        var forms = await inspector.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll(\"a[href*='/results/']\")].map(a => a.pathname)"
        );
        // Of each piece: one visual, two tensile, two root and two face bends, one macro section.
        Assert.Equal(16, forms.Length);
        foreach (var form in forms)
        {
            await inspector.GoToAsync(form);
            await SpecimenEntering.EnterAsync(inspector, TestMachine, workshop.Clock.Today);
        }
    }

    private static async Task AssertPapersTellAsync(
        Visitor visitor,
        string procedure,
        string record
    )
    {
        var sheet = PdfText.Of(await visitor.DownloadAsync(procedure + "/sheet.pdf"));
        Assert.Contains($"{Number} rev A", sheet, StringComparison.Ordinal);
        Assert.Contains(Record, sheet, StringComparison.Ordinal);
        Assert.Contains("Anvil of tool steel", sheet, StringComparison.Ordinal);
        Assert.Contains("Edwin Castle", sheet, StringComparison.Ordinal);
        var evidence = PdfText.Of(await visitor.DownloadAsync(record + "/record.pdf"));
        Assert.Contains("6061-T6", evidence, StringComparison.Ordinal);
        // 0.6 of 290 MPa: EN 14532-3 table 2, group 23.1 in T6 after natural ageing.
        Assert.Contains("174", evidence, StringComparison.Ordinal);
    }

    private static string Show(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

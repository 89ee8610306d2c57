using Bunit;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Tests.Components.Forms;

public sealed class FieldTests : ComponentTest
{
    [Fact]
    public void Render_LabelHintUnitAndError_AreTiedToTheControl()
    {
        var page = Render<Field>(p =>
            p.Add(c => c.Name, "In.Life")
                .Add(c => c.Label, "Life limit")
                .Add(c => c.Kind, FieldKind.Number)
                .Add(c => c.Hint, "Stated by the tool design.")
                .Add(c => c.Unit, "m")
                .Add(c => c.Error, "Enter a value above zero.")
        );

        var control = page.Find("input[name='In.Life']");
        Assert.Equal(control.Id, page.Find("label").GetAttribute("for"));
        Assert.Equal("true", control.GetAttribute("aria-invalid"));
        var described = control
            .GetAttribute("aria-describedby")!
            .Split(' ')
            .Select(id => page.Find("#" + id).TextContent.Trim());
        Assert.Equal(["Enter a value above zero.", "Stated by the tool design.", "m"], described);
    }

    [Fact]
    public void Render_WithoutErrorOrHint_HasNoEmptyReferences()
    {
        var control = Render<Field>(p => p.Add(c => c.Name, "In.A").Add(c => c.Label, "A"))
            .Find("input");

        Assert.False(control.HasAttribute("aria-invalid"));
        Assert.False(control.HasAttribute("aria-describedby"));
    }

    [Fact]
    public void Render_CascadedFaults_TakesTheOneOfItsName()
    {
        IReadOnlyList<FieldFault> faults = [new("In.B", "Not this one."), new("In.A", "This one.")];

        var page = Render<Field>(p =>
            p.Add(c => c.Name, "In.A").Add(c => c.Label, "A").AddCascadingValue(faults)
        );

        Assert.Equal("This one.", page.Find(".field-error").TextContent.Trim());
    }

    [Fact]
    public void Render_Password_IsNeverSentBack()
    {
        var page = Render<Field>(p =>
            p.Add(c => c.Name, "In.Password")
                .Add(c => c.Label, "Password")
                .Add(c => c.Kind, FieldKind.Password)
                .Add(c => c.Value, "secret")
        );

        Assert.DoesNotContain("secret", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_Select_MarksTheChosenOption()
    {
        var page = Render<Field>(p =>
            p.Add(c => c.Name, "In.A")
                .Add(c => c.Label, "A")
                .Add(c => c.Kind, FieldKind.Select)
                .Add(c => c.Options, [new FieldOption("1", "One"), new FieldOption("2", "Two")])
                .Add(c => c.Value, "2")
        );

        Assert.Equal("Two", page.Find("option[selected]").TextContent);
    }

    [Theory]
    [InlineData("true", true)]
    [InlineData("True", true)]
    [InlineData("false", false)]
    [InlineData(null, false)]
    public void Render_Checkbox_IsCheckedOnlyForTrue(string? value, bool isChecked)
    {
        var control = Render<Field>(p =>
                p.Add(c => c.Name, "In.A")
                    .Add(c => c.Label, "A")
                    .Add(c => c.Kind, FieldKind.Checkbox)
                    .Add(c => c.Value, value)
            )
            .Find("input");

        Assert.Equal(isChecked, control.HasAttribute("checked"));
        Assert.Equal("true", control.GetAttribute("value"));
    }

    [Fact]
    public void Change_WithListener_TellsTheNewValue()
    {
        string? told = null;
        var page = Render<Field>(p =>
            p.Add(c => c.Name, "In.A")
                .Add(c => c.Label, "A")
                .Add(c => c.ValueChanged, v => told = v)
        );

        page.Find("input").Change("SP-18");

        Assert.Equal("SP-18", told);
    }

    [Fact]
    public void Render_Date_StandsWrittenOutBesideTheControl()
    {
        var page = Render<Field>(p =>
            p.Add(c => c.Name, "In.A")
                .Add(c => c.Label, "A")
                .Add(c => c.Kind, FieldKind.Date)
                .Add(c => c.Value, "2026-11-25")
        );

        Assert.Equal("2026-11-25", page.Find("#In-A-echo").TextContent);
    }

    [Theory]
    [InlineData("In.Serial", "In-Serial")]
    [InlineData("In.Stages[2].Hold", "In-Stages-2--Hold")]
    [InlineData("a\"><b", "a---b")]
    public void FieldId_AnyName_IsSafeInMarkupAndSelectors(string name, string id) =>
        Assert.Equal(id, FieldId.For(name));
}

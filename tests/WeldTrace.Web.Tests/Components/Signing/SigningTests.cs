using Bunit;
using WeldTrace.Web.Components.Signing;

namespace WeldTrace.Web.Tests.Components.Signing;

public sealed class SigningTests : ComponentTest
{
    [Fact]
    public void SignBlock_Render_StatesPersonSubjectAndMeaningBeforeThePassword()
    {
        var page = Render<SignBlock>(p =>
            p.Add(c => c.PrintedName, "A. Person")
                .Add(c => c.Subject, "the proof test of NR-0042")
                .Add(c => c.Meaning, "I ran this test and the readings are mine.")
                .Add(c => c.Error, "The password is not right.")
        );

        Assert.Contains(
            "you, A. Person, sign the proof test of NR-0042",
            page.Find("p").TextContent,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "I ran this test and the readings are mine.",
            page.Find("blockquote").TextContent
        );
        var password = page.Find("input[type=password][name='In.Password']");
        Assert.Equal("current-password", password.GetAttribute("autocomplete"));
        Assert.Equal("true", password.GetAttribute("aria-invalid"));
        Assert.Equal("submit", page.Find("button").GetAttribute("type"));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void SignDialog_Render_IsOpenOnlyWhenAsked(bool open)
    {
        var page = Render<SignDialog>(p =>
            p.Add(c => c.Id, "sign")
                .Add(c => c.Title, "Sign the run")
                .Add(c => c.OpenText, "Sign")
                .Add(c => c.Open, open)
                .AddChildContent("<form></form>")
        );

        var dialog = page.Find("dialog#sign");
        Assert.Equal(open, dialog.HasAttribute("open"));
        Assert.Equal(
            "Sign the run",
            page.Find("#" + dialog.GetAttribute("aria-labelledby")).TextContent
        );
        Assert.Equal("show-modal", page.Find("button[commandfor=sign]").GetAttribute("command"));
    }

    [Fact]
    public void Signature_Fingerprint_IsShortenedButWholeInItsTitle()
    {
        var hash = new string('a', 64);
        var page = Render<Signature>(p =>
            p.Add(c => c.PrintedName, "A. Person")
                .Add(c => c.Meaning, "welded")
                .Add(c => c.When, "2026-11-25 08:00")
                .Add(c => c.Fingerprint, hash)
        );

        Assert.Equal("aaaaaaaaaaaa…", page.Find(".hash").TextContent);
        Assert.Equal(hash, page.Find(".hash").GetAttribute("title"));
    }
}

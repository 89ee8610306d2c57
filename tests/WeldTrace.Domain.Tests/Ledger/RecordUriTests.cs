using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class RecordUriTests
{
    private static readonly Guid Id = Guid.Parse("0198c0de-0000-7000-8000-000000000010");

    // RFC 6920, section 8.1: "Hello World!" by SHA-256.
    private const string Hello = "7f83b1657ff1fc53b92dc18148a1d65dfc2d4b1fa3d677284addd200126d9069";

    [Fact]
    public void File_OfTheExampleOfTheStandard_IsItsName() =>
        Assert.Equal(
            "ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk",
            RecordUri.File(Hello)
        );

    [Fact]
    public void Read_WhatWasWritten_IsTheSame()
    {
        Assert.Equal(new NamedThing(Id, null, null), RecordUri.Read(RecordUri.Of(Id)));
        Assert.Equal(new NamedThing(Id, 3, null), RecordUri.Read(RecordUri.Version(Id, 3)));
        Assert.Equal(new NamedThing(Id, 12, null), RecordUri.Read(RecordUri.Act(Id, 12)));
        Assert.Equal(new NamedThing(null, null, Hello), RecordUri.Read(RecordUri.File(Hello)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("urn:uuid:")]
    [InlineData("urn:uuid:0198c0de")]
    [InlineData("urn:uuid:0198c0de-0000-7000-8000-000000000010#")]
    [InlineData("urn:uuid:0198c0de-0000-7000-8000-000000000010#v")]
    [InlineData("urn:uuid:0198c0de-0000-7000-8000-000000000010#v-1")]
    [InlineData("urn:uuid:0198c0de-0000-7000-8000-000000000010#act")]
    [InlineData("urn:uuid:0198c0de-0000-7000-8000-000000000010#x1")]
    [InlineData("ni:///sha-256;f4OxZX")]
    [InlineData("ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtk k")]
    [InlineData("https://records.example/")]
    public void Read_AnythingElse_IsNoName(string text) => Assert.Null(RecordUri.Read(text));
}

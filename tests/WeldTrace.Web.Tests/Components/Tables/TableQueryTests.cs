using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Tests.Components.Tables;

public sealed class TableQueryTests
{
    private static TableQuery Read(string query) =>
        TableQuery.Read(new Uri("https://site.invalid/vessels" + query), ["serial", "state"], 20);

    [Fact]
    public void Read_SortWithMinus_IsDescending()
    {
        var query = Read("?sort=-serial&page=3&state=held");

        Assert.Equal(
            ("serial", true, 3, 40),
            (query.Sort, query.Descending, query.Page, query.Skip)
        );
        Assert.Equal("held", query.Filter("state"));
    }

    [Theory]
    [InlineData("?sort=password")]
    [InlineData("?sort=")]
    [InlineData("")]
    public void Read_SortThatIsNotOffered_IsLeftOut(string address) =>
        Assert.Null(Read(address).Sort);

    [Theory]
    [InlineData("?page=-2")]
    [InlineData("?page=0")]
    [InlineData("?page=two")]
    [InlineData("?page=99999999999999999999")]
    public void Read_PageThatCannotBeMeant_IsTheFirst(string address) =>
        Assert.Equal(1, Read(address).Page);

    [Fact]
    public void Read_HugePage_DoesNotOverflowTheSkip() =>
        Assert.True(Read("?page=2000000000").Skip > 0);

    [Fact]
    public void SortedBy_SameKeyAgain_TurnsTheOrderAndGoesToTheFirstPage()
    {
        var query = Read("?sort=serial&page=3&state=held");

        Assert.Equal("/vessels?state=held&sort=-serial", query.SortedBy("serial"));
        Assert.Equal("/vessels?state=held&sort=state", query.SortedBy("state"));
    }

    [Fact]
    public void OnPage_KeepsSortAndFilters() =>
        Assert.Equal(
            "/vessels?state=held&sort=-serial&page=4",
            Read("?sort=-serial&state=held").OnPage(4)
        );

    [Fact]
    public void WholeAt_OtherPath_KeepsSortAndFiltersWithoutPage() =>
        Assert.Equal(
            "/vessels.csv?state=held&sort=serial",
            Read("?sort=serial&state=held&page=2").WholeAt("/vessels.csv")
        );

    [Fact]
    public void OnPage_HostileFilter_IsEncoded() =>
        Assert.DoesNotContain("<", Read("?state=%3Cscript%3E").OnPage(1), StringComparison.Ordinal);
}

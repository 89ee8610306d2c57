namespace WeldTrace.Web.Reading;

public static class FoundRecord
{
    /// <summary>Passes on what a page looked for; when it isn't there, the answer says so with status 404.</summary>
    public static T? Found<T>(this HttpContext http, T? record)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(http);
        if (record is null)
        {
            http.Response.StatusCode = StatusCodes.Status404NotFound;
        }

        return record;
    }
}

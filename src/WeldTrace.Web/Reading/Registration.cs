namespace WeldTrace.Web.Reading;

public static class Registration
{
    public static IServiceCollection AddReading(this IServiceCollection services) =>
        services
            .AddSingleton<SiteReader>()
            .AddSingleton<SiteDay>()
            .AddSingleton<StampReader>()
            .AddSingleton<InstrumentReader>();
}

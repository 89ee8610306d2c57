namespace WeldTrace.Web.Demo;

public static class Registration
{
    public static IServiceCollection AddDemo(
        this IServiceCollection services,
        IConfiguration configuration
    )
    {
        services.AddSingleton<DemoMode>();
        if (configuration.GetValue("Demo", false))
        {
            services.AddHostedService<DemoData>();
        }

        return services;
    }
}

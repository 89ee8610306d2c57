namespace WeldTrace.Web.Features.SignIn;

public static class Registration
{
    public static IServiceCollection AddSignIn(this IServiceCollection services) =>
        services.AddScoped<Entrance>().AddScoped<SignInHandler>().AddScoped<ChangePersonHandler>();
}

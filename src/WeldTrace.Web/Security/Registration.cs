using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Security;

public static class Registration
{
    public static IServiceCollection AddSecurity(
        this IServiceCollection services,
        IConfiguration configuration
    )
    {
        services.AddCascadingAuthenticationState();
        services.AddScoped<CurrentActor>();
        services.AddHttpContextAccessor();
        services.AddScoped<Sessions>();
        services.AddScoped<TabletCookie>();
        services.AddScoped<PinCheck>();
        AddProofs(services);
        services.AddAuthorization(Policies.Add);
        services.AddSingleton<IAuthorizationMiddlewareResultHandler, RefusalLog>();
        var authentication = services.AddAuthentication(IdentityConstants.ApplicationScheme);
        authentication.AddIdentityCookies();
        authentication.AddScheme<AuthenticationSchemeOptions, LogTokenScheme>(
            LogTokenScheme.Name,
            null
        );
        authentication.AddScheme<AuthenticationSchemeOptions, SystemTokenScheme>(
            SystemTokenScheme.Name,
            null
        );
        services
            .AddIdentityCore<Account>(options =>
            {
                options.Password.RequiredLength = 1;
                options.Password.RequireDigit = false;
                options.Password.RequireLowercase = false;
                options.Password.RequireUppercase = false;
                options.Password.RequireNonAlphanumeric = false;
                options.User.AllowedUserNameCharacters = "";
            })
            .AddUserStore<AccountStore>()
            .AddSignInManager()
            .AddTokenProvider<AuthenticatorTokenProvider<Account>>(
                TokenOptions.DefaultAuthenticatorProvider
            )
            .AddPasswordValidator<PasswordRules>()
            .AddClaimsPrincipalFactory<AccountClaims>();
        services.Configure<IdentityPasskeyOptions>(options =>
            (options.UserVerificationRequirement, options.ResidentKeyRequirement) = (
                "required",
                "required"
            )
        );
        services.Configure<PasswordHasherOptions>(options => options.IterationCount = 210_000);
        AddCookies(services);
        var folder = new DatabaseSettings(configuration).Folder;
        services
            .AddDataProtection()
            .SetApplicationName("WeldTrace")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(folder, "keys")));
        return services;
    }

    private static void AddProofs(IServiceCollection services)
    {
        services.AddSingleton<SignInLimit>();
        services.AddScoped<ISigningSession, SigningSession>();
        services.AddScoped<PasswordCheck>();
        services.AddScoped<SecondFactor>();
        services.AddScoped<AccountStore>();
        services.AddHostedService<SecondFactorsAtStart>();
        services.AddScoped<ActivePeople>();
        services.AddScoped<NewAccount>();
        services.AddSingleton<SetUpCode>();
    }

    private static void AddCookies(IServiceCollection services)
    {
        services
            .AddOptions<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme)
            .Configure<IHttpContextAccessor>(
                (options, http) =>
                {
                    options.Cookie = new HostCookie("weld-records", http);
                    options.LoginPath = Routes.SignIn;
                    options.AccessDeniedPath = "/not-allowed";
                    options.ReturnUrlParameter = "from";
                    options.ExpireTimeSpan = AccountSession.Idle;
                    options.SlidingExpiration = true;
                    options.Events.OnValidatePrincipal = SessionGuard.ValidateAsync;
                    var usual = options.Events.OnRedirectToLogin;
                    options.Events.OnRedirectToLogin = context =>
                    {
                        var tablet =
                            context.HttpContext.RequestServices.GetRequiredService<TabletCookie>();
                        context.RedirectUri = context.RedirectUri.Replace(
                            $"{Routes.SignIn}?",
                            $"{tablet.Door}?",
                            StringComparison.Ordinal
                        );
                        return usual(context);
                    };
                }
            );
        services
            .AddOptions<CookieAuthenticationOptions>(IdentityConstants.TwoFactorUserIdScheme)
            .Configure<IHttpContextAccessor>(
                (options, http) => options.Cookie = new HostCookie("weld-challenge", http)
            );
        services.AddAntiforgery();
        services
            .AddOptions<AntiforgeryOptions>()
            .Configure<IHttpContextAccessor>(
                (options, http) => options.Cookie = new HostCookie("weld-forms", http)
            );
    }
}

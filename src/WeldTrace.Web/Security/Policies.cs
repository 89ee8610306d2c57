using Microsoft.AspNetCore.Authorization;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;

namespace WeldTrace.Web.Security;

/// <summary>Who may open which page. What a person may do there is asked of the domain at every act.</summary>
public static class Policies
{
    public const string Engineering = "engineering";
    public const string Welding = "welding";
    public const string Inspecting = "inspecting";
    public const string Bench = "bench";
    public const string Working = "working";
    public const string Quality = "quality";
    public const string Accounts = "accounts";
    public const string Procedures = "procedures";
    public const string QualityManaging = "quality-managing";
    public const string Witnessing = "witnessing";

    /// <summary>A machine with its token; no person.</summary>
    public const string PushingLogs = "pushing-logs";

    /// <summary>Another system with its token; no person.</summary>
    public const string PushingReadings = "pushing-readings";

    /// <summary>Another system with its token; no person.</summary>
    public const string ReadingHistories = "reading-histories";

    /// <summary>Whoever ordered the histories that the address names, the quality manager and the administrator.</summary>
    public const string OrderedHistories = "ordered-histories";

    public static void Add(AuthorizationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.FallbackPolicy = new AuthorizationPolicyBuilder()
            .RequireAuthenticatedUser()
            .Build();
        options.AddPolicy(
            PushingLogs,
            p =>
                p.AddAuthenticationSchemes(LogTokenScheme.Name)
                    .RequireClaim(LogTokenScheme.MachineClaim)
        );
        AllowSystem(options, PushingReadings, TokenScope.PushBenchReadings);
        AllowSystem(options, ReadingHistories, TokenScope.ReadHistories);
        options.AddPolicy(
            OrderedHistories,
            p => p.RequireAuthenticatedUser().AddRequirements(new OwnOrderRequirement())
        );
        Allow(options, Engineering, Role.Engineer);
        Allow(options, Welding, Role.Operator);
        Allow(options, Inspecting, Role.Inspector);
        Allow(options, Bench, Role.Inspector, Role.QualityManager);
        Allow(options, Working, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager);
        Allow(options, Quality, Role.Engineer, Role.Inspector, Role.QualityManager);
        Allow(options, Procedures, Role.Engineer, Role.QualityManager);
        Allow(options, QualityManaging, Role.QualityManager);
        Allow(options, Witnessing, Role.Auditor, Role.QualityManager, Role.Administrator);
        // Whoever may set passwords of others has proved more than a PIN.
        options.AddPolicy(
            Accounts,
            p =>
                p.RequireAuthenticatedUser()
                    .RequireRole(nameof(Role.Administrator), nameof(Role.QualityManager))
                    .RequireAssertion(c => !c.User.HasClaim(AccountClaims.ByPin, "true"))
        );
    }

    private static void AllowSystem(
        AuthorizationOptions options,
        string policy,
        TokenScope scope
    ) =>
        options.AddPolicy(
            policy,
            p =>
                p.AddAuthenticationSchemes(SystemTokenScheme.Name)
                    .RequireClaim(SystemTokenScheme.ScopeClaim, scope.ToString())
        );

    private static void Allow(AuthorizationOptions options, string policy, params Role[] roles) =>
        options.AddPolicy(
            policy,
            p => p.RequireAuthenticatedUser().RequireRole(roles.Select(r => r.ToString()))
        );
}

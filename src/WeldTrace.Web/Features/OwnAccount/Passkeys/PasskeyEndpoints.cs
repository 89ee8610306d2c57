namespace WeldTrace.Web.Features.OwnAccount.Passkeys;

/// <summary>What the browser asks for before it uses a passkey; the challenge is kept in a sealed cookie until it is answered.</summary>
public static class PasskeyEndpoints
{
    private const string Json = "application/json; charset=utf-8";

    public static void MapPasskeys(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet(
            Security.Passkeys.Creation,
            async (HttpContext http, PasskeysHandler handler) =>
                Results.Content(await handler.CreationOptionsAsync(http), Json)
        );
        endpoints.MapGet(Security.Passkeys.Challenge, ChallengeAsync);
        endpoints.MapGet(Security.Passkeys.SignInChallenge, ChallengeAsync).AllowAnonymous();
    }

    private static async Task<IResult> ChallengeAsync(HttpContext http, PasskeysHandler handler) =>
        Results.Content(await handler.ChallengeAsync(http), Json);
}

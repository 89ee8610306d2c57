using Microsoft.AspNetCore.Antiforgery;

namespace WeldTrace.Web.Features.OwnAccount.Passkeys;

/// <summary>What the browser asks for before it uses a passkey; the challenge is kept in a sealed cookie until it is answered.</summary>
public static class PasskeyEndpoints
{
    private const string Json = "application/json; charset=utf-8";

    public static void MapPasskeys(this IEndpointRouteBuilder endpoints)
    {
        var token = new RequireAntiforgeryTokenAttribute();
        endpoints
            .MapPost(
                Routes.PasskeyCreation,
                async (HttpContext http, PasskeysHandler handler) =>
                    Results.Content(await handler.CreationOptionsAsync(http), Json)
            )
            .WithMetadata(token);
        endpoints.MapPost(Routes.PasskeyRequest, ChallengeAsync).WithMetadata(token);
        endpoints
            .MapPost(Routes.SignInChallenge, ChallengeAsync)
            .WithMetadata(token)
            .AllowAnonymous();
    }

    private static async Task<IResult> ChallengeAsync(HttpContext http, PasskeysHandler handler) =>
        Results.Content(await handler.ChallengeAsync(http), Json);
}

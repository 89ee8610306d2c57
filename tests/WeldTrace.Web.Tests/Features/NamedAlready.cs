using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Features;

/// <summary>A session in which somebody has signed with name and password, so that the password is enough.</summary>
internal sealed class NamedAlready : ISigningSession
{
    public bool AsksForName => false;

    public bool AsksForCode => false;

    public bool HasPasskey => false;

    public string? TypedName => null;

    public string? TypedCode => null;

    public Task<PasskeyProof?> PasskeyAsync() => Task.FromResult<PasskeyProof?>(null);

    public Task BeginAsync() => Task.CompletedTask;
}

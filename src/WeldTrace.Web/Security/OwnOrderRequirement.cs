using Microsoft.AspNetCore.Authorization;

namespace WeldTrace.Web.Security;

/// <summary>The person may see the order that the address names.</summary>
public sealed class OwnOrderRequirement : IAuthorizationRequirement;

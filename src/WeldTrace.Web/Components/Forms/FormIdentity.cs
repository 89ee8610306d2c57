namespace WeldTrace.Web.Components.Forms;

/// <summary>The identity that a form carries from its first showing, so that saving it twice writes one record.</summary>
public static class FormIdentity
{
    /// <summary>The posted identity when it is one that this site makes, else a new one.</summary>
    public static Guid OrNew(Guid posted, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return posted.Version == 7 ? posted : Guid.CreateVersion7(clock.GetUtcNow());
    }
}

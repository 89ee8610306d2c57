using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

internal static class DemoSaving
{
    public static async Task SaveForDemoAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation
    ) => (await db.SaveAsync(cancellation)).Must();
}

using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace WeldTrace.Persistence.Loading;

/// <summary>Gives a query of a <see cref="RoundTrip"/> its part of the common answer instead of asking the database again.</summary>
internal sealed class RoundTripInterceptor : DbCommandInterceptor
{
    public static RoundTripInterceptor Instance { get; } = new();

    public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command,
        CommandEventData eventData,
        InterceptionResult<DbDataReader> result,
        CancellationToken cancellationToken = default
    ) =>
        new(
            eventData.Context is WeldTraceDbContext { Answering: { } answer }
                ? InterceptionResult<DbDataReader>.SuppressWithResult(new AnswerReader(answer))
                : result
        );
}

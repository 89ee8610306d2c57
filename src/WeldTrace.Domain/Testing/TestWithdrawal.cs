namespace WeldTrace.Domain.Testing;

/// <summary>A test that was entered wrongly and taken back before anyone signed it; it stays readable.</summary>
/// <param name="Reason">Why; 1 to 400 characters.</param>
/// <param name="PersonId">Who took it back.</param>
/// <param name="PrintedName">Printed name of that person.</param>
/// <param name="At">UTC instant.</param>
public sealed record TestWithdrawal(
    string Reason,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

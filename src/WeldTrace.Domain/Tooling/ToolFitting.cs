using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>Marks of the parts of a tool whose pin and shoulder are separate.</summary>
/// <param name="Pin">Mark of the pin.</param>
/// <param name="Shoulder">Mark of the shoulder.</param>
public sealed record ToolPartMarks(string Pin, string Shoulder);

public sealed partial class Tool
{
    /// <summary>The pin that is fitted; null for a tool in one piece.</summary>
    public ToolPart? Pin => Fitted(ToolPartKind.Pin);

    /// <summary>The shoulder that is fitted; null for a tool in one piece.</summary>
    public ToolPart? Shoulder => Fitted(ToolPartKind.Shoulder);

    /// <summary>Length charged to the shoulder that is fitted; null for a tool in one piece.</summary>
    public Length? ShoulderUsed =>
        Shoulder is { } shoulder ? UsedBy(Uses.Where(u => u.ShoulderMark == shoulder.Mark)) : null;

    /// <summary>What is left of the shoulder's life; null where it has no limit of its own.</summary>
    public Length? ShoulderRemaining => ShoulderLifeLimit - ShoulderUsed;

    /// <summary>What the tool, or each of its pins, has done and how it ended.</summary>
    public IReadOnlyList<ToolLife> Lives =>
        Parts is null
            ? [new(Mark, Used, Retirement)]
            :
            [
                .. Parts
                    .Where(p => p.Kind == ToolPartKind.Pin)
                    .Select(p => new ToolLife(
                        $"{Mark}, pin {p.Mark}",
                        UsedBy(Uses.Where(u => u.PinMark == p.Mark)),
                        p.EndedAt is null ? Retirement : p.Ended
                    )),
            ];

    /// <summary>Takes a part off and fits another; a new pin needs its first-use check before the tool welds again.</summary>
    /// <param name="kind">Pin or shoulder.</param>
    /// <param name="mark">Permanent mark of the new part; never fitted to this tool before.</param>
    /// <param name="why">Why the old one was taken off.</param>
    /// <param name="seen">What was seen on the old one; 1 to 200 characters.</param>
    /// <param name="actor">Who fits it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome FitPart(
        ToolPartKind kind,
        string mark,
        RetirementReason why,
        string seen,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var trimmed = mark?.Trim() ?? "";
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.QualityManager)
            .That(State != ToolState.Retired, "state", $"{Mark} is retired.")
            .That(
                Parts is not null,
                "parts",
                $"{Mark} is in one piece by its drawing; its pin can't be changed."
            )
            .Text(trimmed, LongestMark, "Give the mark that is on the part", nameof(ToolPart.Mark))
            .That(
                Parts?.Any(p => p.Mark == trimmed) is not true,
                "mark",
                $"Part {trimmed} was fitted to {Mark} before; a part that was taken off is not fitted again.",
                nameof(ToolPart.Mark)
            )
            .Text(
                seen,
                LongestReason,
                "Say what was seen on the part taken off",
                nameof(ToolPart.EndNote)
            );
        return Do(
            checks,
            () => Replace(kind, trimmed, why, seen.Trim(), actor, at),
            actor,
            at,
            kind == ToolPartKind.Pin ? "pin changed" : "shoulder changed",
            seen
        );
    }

    private void Replace(
        ToolPartKind kind,
        string mark,
        RetirementReason why,
        string seen,
        Actor actor,
        DateTimeOffset at
    )
    {
        Parts =
        [
            .. Parts!.Select(p =>
                p.Kind == kind && p.EndedAt is null
                    ? p with
                    {
                        Ended = why,
                        EndNote = seen,
                        EndedAt = at,
                    }
                    : p
            ),
            new(kind, mark, at, actor.PrintedName),
        ];
        if (kind == ToolPartKind.Pin)
        {
            (State, HeldBecause) = (ToolState.InStore, null);
        }
    }

    private static void CheckParts(Checks checks, ToolDesign design, ToolPartMarks? parts)
    {
        var isSeparate = design.Geometry.HasSeparateParts is true;
        checks.That(
            isSeparate == parts is not null,
            "parts",
            isSeparate
                ? $"Pin and shoulder of {design.Label} are separate parts; give the mark of each."
                : $"A tool of {design.Label} is in one piece; it has one mark.",
            nameof(ToolPartMarks.Pin)
        );
        if (isSeparate && parts is not null)
        {
            checks
                .Text(parts.Pin, LongestMark, "Give the mark of the pin", nameof(parts.Pin))
                .Text(
                    parts.Shoulder,
                    LongestMark,
                    "Give the mark of the shoulder",
                    nameof(parts.Shoulder)
                )
                .That(
                    !string.Equals(
                        parts.Pin?.Trim(),
                        parts.Shoulder?.Trim(),
                        StringComparison.OrdinalIgnoreCase
                    ),
                    "mark",
                    "Pin and shoulder need marks of their own; give two different ones.",
                    nameof(parts.Shoulder)
                );
        }
    }

    private ToolPart? Fitted(ToolPartKind kind) =>
        Parts?.FirstOrDefault(p => p.Kind == kind && p.EndedAt is null);
}

using WeldTrace.Documents;
using WeldTrace.Documents.Qualifications;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.Sheet;

/// <summary>Test pieces as a qualification record prints them, the spoilt ones too.</summary>
internal static class PrintedPieces
{
    public static IEnumerable<PieceSheet> Of(PieceStanding standing, DocumentStamp stamp)
    {
        foreach (var earlier in standing.Earlier)
        {
            yield return Sheet(standing.Planned, earlier, " (doesn't stand)", stamp);
        }

        yield return standing.Welded is { } welded
            ? Sheet(standing.Planned, welded, "", stamp)
            : new PieceSheet(
                $"Piece {standing.Planned.Mark}, {PlanWords.Of(standing.Planned.Heat)}",
                new StateMark("not welded", MarkShape.Ring)
            )
            {
                Particulars = [new LabelledValue("To be set", PlanWords.Of(standing.Planned))],
            };
    }

    private static PieceSheet Sheet(
        PlannedPiece planned,
        TestPiece piece,
        string remark,
        DocumentStamp stamp
    ) =>
        new(
            $"Piece {planned.Mark}, {PlanWords.Of(planned.Heat)}{remark}",
            PrintedMarks.Of(DomainMarks.Of(piece.State), TestPiece.StateWord(piece.State))
        )
        {
            Particulars =
            [
                new LabelledValue("Set to", PlanWords.Of(planned)),
                new LabelledValue("Machine", piece.MachineName),
                new LabelledValue("Tool", piece.ToolMark),
                new LabelledValue("Operator", piece.OperatorName),
                .. piece.Lots.Select(l => new LabelledValue(
                    "Material",
                    $"{l.Number}, {l.Material}, cast {l.CastNumber}"
                )),
                new LabelledValue("Process log", piece.Log?.FileName),
                new LabelledValue(
                    "Travelled",
                    FormattableString.Invariant($"{piece.Travelled?.Millimetres:0.#} mm")
                ),
                new LabelledValue("Remark", piece.Remark),
            ],
            AsRun = [.. (piece.Log?.Parameters ?? []).Select(p => AsRun(p, stamp.Units))],
        };

    private static AsRunRow AsRun(LoggedParameter found, UnitSystem units) =>
        new(
            ParameterNames.Of(found.Parameter),
            ParameterText.UnitOf(found.Parameter, units).Symbol,
            ParameterText.Measured(found.Parameter, found.MinimumSi, units),
            ParameterText.Measured(found.Parameter, found.MeanSi, units),
            ParameterText.Measured(found.Parameter, found.MaximumSi, units)
        );
}

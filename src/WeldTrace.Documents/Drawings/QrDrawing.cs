using QRCoder;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Drawings;

/// <summary>A QR code drawn as one path; medium error correction, quiet zone of four modules.</summary>
internal sealed class QrDrawing : Drawing
{
    private readonly bool[][] _modules;

    public QrDrawing(string content)
    {
        using var generator = new QRCodeGenerator();
        using var code = generator.CreateQrCode(content, QRCodeGenerator.ECCLevel.M);
        _modules = [.. code.ModuleMatrix.Select(row => row.Cast<bool>().ToArray())];
        AlternativeText = $"QR code of {content}";
    }

    /// <summary>Longest content in bytes: version 40 with medium error correction, ISO/IEC 18004.</summary>
    public const int MostBytes = 2331;

    public override string AlternativeText { get; }

    /// <summary>Rows of modules with the quiet zone; true is dark.</summary>
    public IReadOnlyList<IReadOnlyList<bool>> Modules => _modules;

    public override double Height(double width) => width;

    public override void Draw(Surface surface, double width)
    {
        var module = width / _modules.Length;
        surface.Rectangles(
            Runs()
                .Select(run => new Area(
                    run.Column * module,
                    run.Row * module,
                    run.Length * module,
                    module
                ))
        );
    }

    private IEnumerable<(int Row, int Column, int Length)> Runs()
    {
        for (var row = 0; row < _modules.Length; row++)
        {
            for (var column = 0; column < _modules.Length; column++)
            {
                var start = column;
                while (column < _modules.Length && _modules[row][column])
                {
                    column++;
                }

                if (column > start)
                {
                    yield return (row, start, column - start);
                }
            }
        }
    }
}

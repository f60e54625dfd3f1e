using System.Globalization;
using System.Text;
using QRCoder;

namespace BrewFloor.Web.Labels;

/// <summary>A text as a QR code, drawn in squares of 1: a run of dark squares is one rectangle of the path.</summary>
/// <param name="Side">Squares along one side, the quiet border of 4 on each side counted.</param>
/// <param name="Path">The dark squares, as the <c>d</c> of an SVG path.</param>
internal sealed record QrCode(int Side, string Path)
{
    /// <summary>With a quarter of it scratched or wet it is still read (level Q of ISO/IEC 18004).</summary>
    public static QrCode Of(string text)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.Q);
        var path = new StringBuilder();
        for (var y = 0; y < data.ModuleMatrix.Count; y++)
        {
            var row = data.ModuleMatrix[y];
            for (var x = 0; x < row.Count; x++)
            {
                var from = x;
                while (x < row.Count && row[x])
                {
                    x++;
                }

                if (x > from)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{from} {y}h{x - from}v1h-{x - from}z");
                }
            }
        }

        return new(data.ModuleMatrix.Count, path.ToString());
    }
}

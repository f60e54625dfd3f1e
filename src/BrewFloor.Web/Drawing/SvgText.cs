using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace BrewFloor.Web.Drawing;

/// <summary>Markup of one drawing, put together piece by piece; numbers are written with one decimal at most.</summary>
internal sealed class SvgText
{
    private readonly StringBuilder _markup = new(2048);

    public void Add(string markup) => _markup.Append(markup);

    public void Path(string look, PathData data) => _markup.Append(Element($"class=\"{look}\"", data));

    /// <summary>A path filled with a shared pattern or a colour.</summary>
    public void Filled(string fill, PathData data) => _markup.Append(Element($"fill=\"{fill}\"", data));

    public void Circle(string look, double x, double y, double radius) =>
        Add($"<circle class=\"{look}\" cx=\"{Px.Of(x)}\" cy=\"{Px.Of(y)}\" r=\"{Px.Of(radius)}\"/>");

    public override string ToString() => _markup.ToString();

    private static string Element(string attribute, PathData data) => $"<path {attribute} d=\"{data}\"/>";
}

/// <summary>The <c>d</c> of a path as an interpolated string: short numbers, no culture.</summary>
[InterpolatedStringHandler]
internal readonly struct PathData
{
    private readonly StringBuilder _text;

    public PathData(int literalLength, int formattedCount) => _text = new(literalLength + (formattedCount * 6));

    public void AppendLiteral(string text) => _text.Append(text);

    public void AppendFormatted(double value) => _text.Append(Px.Of(value));

    public void AppendFormatted(string? text) => _text.Append(text);

    public void AppendFormatted(PathData data) => _text.Append(data._text);

    public override string ToString() => _text.ToString();
}

/// <summary>How a length in px is written.</summary>
internal static class Px
{
    public static string Of(double value)
    {
        var text = value.ToString("0.#", CultureInfo.InvariantCulture);
        return text is "-0" ? "0" : text;
    }
}

namespace BrewFloor.Web.Drawing;

/// <summary>A number beside the drawing of a tank.</summary>
/// <param name="Place">Where it is measured.</param>
/// <param name="Name">What it is and of when: "Gravity 08:10".</param>
/// <param name="Value">With its unit: "18.6 °C", or "volume not known".</param>
/// <param name="Should">What it should be: "set 18.5".</param>
public sealed record ReadOut(ReadOutPlace Place, string Name, string Value, string Should)
{
    /// <summary>More would not be read at arm's length.</summary>
    public const int Most = 5;
}

/// <summary>From a dot in the tank to the height of its words, px.</summary>
internal readonly record struct ReadOutLine(double DotX, double DotY, double WordsY)
{
    /// <summary>Four lines of words with air between them: on a phone what it is and of when takes two.</summary>
    public const double WordsHeight = 80;

    /// <summary>Words at the height of their dots, moved apart as little as needed, first down, then up from the end.</summary>
    public static IReadOnlyList<ReadOutLine> Spread(IReadOnlyList<(double X, double Y)> dots, double height)
    {
        var words = dots.Select(dot => Math.Max(dot.Y, WordsHeight / 2)).ToArray();
        for (var i = 1; i < words.Length; i++)
        {
            words[i] = Math.Max(words[i], words[i - 1] + WordsHeight);
        }

        var lowest = Math.Max(height, words.Length * WordsHeight) - (WordsHeight / 2);
        for (var i = words.Length - 1; i >= 0; i--)
        {
            words[i] = Math.Min(words[i], lowest);
            lowest = words[i] - WordsHeight;
        }

        return [.. dots.Select((dot, i) => new ReadOutLine(dot.X, dot.Y, words[i]))];
    }
}

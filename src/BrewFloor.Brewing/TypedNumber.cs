using System.Globalization;

namespace BrewFloor.Brewing;

/// <summary>Reads a number as people type it, in any language.</summary>
public static class TypedNumber
{
    // Longer than anything a person means, short enough that no text reaches infinity.
    private const int LongestText = 30;

    /// <summary>The number in a text: a single comma or point is the decimal mark, whatever the reader's language.</summary>
    /// <param name="text">
    /// Digits 0 to 9 with at most one mark and a sign (also the typographic minus). Spaces around it, no-break ones too,
    /// do not count.
    /// </param>
    /// <returns>
    /// The number, always finite. Refused: nothing typed (<c>number-missing</c>), comma and point together
    /// (<c>two-separators</c>), digits in groups (<c>grouped-number</c>) and all else (<c>not-a-number</c>).
    /// </returns>
    /// <remarks>
    /// "1.048" must never become a thousand and forty-eight because a browser speaks German: so no culture is asked, and
    /// what could be read two ways is asked again.
    /// </remarks>
    public static Outcome<double> Parse(string? text)
    {
        var typed = (text ?? "").Trim(); // knows the no-break spaces
        if (typed.Length == 0)
        {
            return No("number-missing");
        }

        var unsigned = typed[0] is '+' or '-' or '−' ? typed[1..] : typed;
        if (Objection(unsigned) is { } code)
        {
            return No(code);
        }

        var value = double.Parse(
            unsigned.Replace(',', '.'),
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture
        );
        return typed[0] is '-' or '−' ? 0 - value : value; // no minus zero
    }

    private static string? Objection(string digits)
    {
        if (digits.Length > LongestText || !digits.Any(char.IsAsciiDigit) || !digits.All(MayStandInANumber))
        {
            return "not-a-number";
        }

        if (digits.Contains(',', StringComparison.Ordinal) && digits.Contains('.', StringComparison.Ordinal))
        {
            return "two-separators";
        }

        return digits.Count(c => c is ',' or '.') > 1 || digits.Any(IsGap) ? "grouped-number" : null;
    }

    private static bool MayStandInANumber(char c) => char.IsAsciiDigit(c) || c is ',' or '.' || IsGap(c);

    // Thousands apart by a space or an apostrophe: a number, but "12 5" has no single meaning.
    private static bool IsGap(char c) => char.IsWhiteSpace(c) || c is '\'' or '’';

    private static Refusal No(string code) => new(code, "number", "", "");
}

using System.Globalization;
using System.Text.RegularExpressions;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>In which order a date is written; between its numbers stands a point, a hyphen or a stroke.</summary>
public enum DateOrder
{
    YearMonthDay,
    DayMonthYear,
    MonthDayYear,
}

/// <summary>Dates as text. Which order they are in is guessed only when no other could be meant.</summary>
internal static partial class SheetDates
{
    private static readonly DateOrder[] Orders = Enum.GetValues<DateOrder>();

    /// <summary>The day and time written in a cell; null: no such day, or not written so.</summary>
    public static DateTime? Read(string text, DateOrder order)
    {
        if (Parts(text, order) is not var (year, month, day))
        {
            return null;
        }

        var isThere = month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month);
        var clock = Written().Match(text).Groups["clock"].Value;
        return !isThere ? null
            : clock.Length == 0 ? new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Unspecified)
            : TimeOnly.TryParse(clock, CultureInfo.InvariantCulture, out var time)
                ? new DateOnly(year, month, day).ToDateTime(time)
            : null;
    }

    /// <summary>The only order in which all that look like dates can be read; null: several, none, or no such text.</summary>
    public static DateOrder? Guess(IEnumerable<string> texts)
    {
        string[] dates = [.. texts.Where(text => Written().IsMatch(text))];
        DateOrder[] possible = dates.Length == 0 ? [] : [.. Orders.Where(o => dates.All(date => CanBe(date, o)))];
        return possible is [var only] ? only : null;
    }

    // The 31st of February is a slip in a date, not another order.
    private static bool CanBe(string date, DateOrder order) =>
        Parts(date, order) is (_, >= 1 and <= 12, >= 1 and <= 31);

    private static (int Year, int Month, int Day)? Parts(string text, DateOrder order)
    {
        var match = Written().Match(text);
        if (!match.Success)
        {
            return null;
        }

        string[] parts = [match.Groups["a"].Value, match.Groups["b"].Value, match.Groups["c"].Value];
        var (year, month, day) = order switch
        {
            DateOrder.YearMonthDay => (parts[0], parts[1], parts[2]),
            DateOrder.DayMonthYear => (parts[2], parts[1], parts[0]),
            _ => (parts[2], parts[0], parts[1]),
        };
        return year.Length == 4 && month.Length <= 2 && day.Length <= 2 && year is not "0000"
            ? (Number(year), Number(month), Number(day))
            : null;
    }

    private static int Number(string digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<a>[0-9]{1,4})(?<mark>[./-])(?<b>[0-9]{1,2})\k<mark>(?<c>[0-9]{1,4})([ T](?<clock>[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?))?\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Written();
}

using System.Globalization;
using System.Text;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Spreadsheets;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Tests.Spreadsheets;

/// <summary>What columns mean is guessed by the words above them, and never where two things could be meant.</summary>
public class MatchingTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en");
    private static readonly Wording Words = new(new Figures(English, TimeZoneInfo.Utc, ReadingUnits.Metric), English);

    [Theory]
    [InlineData(SheetKind.Tanks, "Tank No.", "code", null)]
    [InlineData(SheetKind.Tanks, "Volume (hL)", "working", "hL")]
    [InlineData(SheetKind.Tanks, "Volume [US gal]", "working", "gal")]
    [InlineData(SheetKind.Tanks, "capacity_bbl", "working", "bbl")]
    [InlineData(SheetKind.Tanks, "Volume, L", "working", "L")]
    [InlineData(SheetKind.Tanks, "Volume", "working", "L")]
    [InlineData(SheetKind.Tanks, "Volume (firkin)", "working", null)]
    [InlineData(SheetKind.Tanks, "Max temp in °F", "highest-cleaning", "°F")]
    [InlineData(SheetKind.Tanks, "MAWP (psi)", "rating", "psi")]
    [InlineData(SheetKind.Tanks, "Inside diameter of the cylinder (mm)", "diameter", "mm")]
    [InlineData(SheetKind.Tanks, "Favourite song", null, null)]
    [InlineData(SheetKind.Batches, "Beer name", "name", null)]
    [InlineData(SheetKind.Batches, "FV", "tank", null)]
    [InlineData(SheetKind.Batches, "OG (°P)", "original", "°P")]
    [InlineData(SheetKind.Cultures, "Yeast", "strain", null)]
    [InlineData(SheetKind.Cultures, "Gen", "generation", null)]
    [InlineData(SheetKind.Cultures, "Slurry (L)", "amount", "L")]
    public void A_column_is_guessed_by_its_header(SheetKind kind, string header, string? field, string? unit)
    {
        var match = Match(kind, header, "x").Columns[0];

        Assert.Equal((field, unit), (match.Field, match.Unit));
    }

    [Theory]
    [InlineData("1.048", "SG")]
    [InlineData("1,048", "SG")]
    [InlineData("12", "°P")]
    public void A_gravity_without_a_unit_is_told_by_its_figures(string figure, string unit) =>
        Assert.Equal(unit, Match(SheetKind.Batches, "OG", figure).Columns[0].Unit);

    [Fact]
    public void Of_two_columns_that_could_be_one_field_the_second_is_left_out()
    {
        var match = Match(SheetKind.Tanks, "Code,Tank ID", "K1,K2");

        Assert.Equal(["code", null], match.Columns.Select(column => column.Field));
    }

    [Theory]
    [InlineData(new[] { "2026-03-14" }, DateOrder.YearMonthDay)]
    [InlineData(new[] { "05.03.2026", "14.03.2026" }, DateOrder.DayMonthYear)]
    [InlineData(new[] { "03/05/2026", "03/14/2026" }, DateOrder.MonthDayYear)]
    [InlineData(new[] { "31.02.2026" }, DateOrder.DayMonthYear)] // no such day, and yet no other order
    [InlineData(new[] { "03/05/2026", "04/06/2026" }, null)] // May or March
    [InlineData(new[] { "14/03/2026", "03/14/2026" }, null)] // neither order for both
    [InlineData(new[] { "in spring" }, null)]
    public void The_order_of_dates_is_guessed_only_when_no_other_could_be_meant(string[] dates, DateOrder? order) =>
        Assert.Equal(order, SheetDates.Guess(dates));

    [Theory]
    [InlineData("14.03.2026", DateOrder.DayMonthYear, "2026-03-14T00:00:00")]
    [InlineData("3/14/2026", DateOrder.MonthDayYear, "2026-03-14T00:00:00")]
    [InlineData("2026-03-14 15:30", DateOrder.YearMonthDay, "2026-03-14T15:30:00")]
    [InlineData("29.02.2028", DateOrder.DayMonthYear, "2028-02-29T00:00:00")]
    [InlineData("29.02.2027", DateOrder.DayMonthYear, null)]
    [InlineData("31.02.2026", DateOrder.DayMonthYear, null)]
    [InlineData("2026-13-01", DateOrder.YearMonthDay, null)]
    [InlineData("2026-03-14 25:00", DateOrder.YearMonthDay, null)]
    [InlineData("14.03.26", DateOrder.DayMonthYear, null)] // of which century
    [InlineData("0000-01-01", DateOrder.YearMonthDay, null)]
    public void A_date_is_read_in_its_order_or_not_at_all(string text, DateOrder order, string? read) =>
        Assert.Equal(read, SheetDates.Read(text, order)?.ToString("s", CultureInfo.InvariantCulture));

    [Theory]
    [InlineData("volume", "95", "95 L")]
    [InlineData("volume", "95,5", "95,5 L")]
    [InlineData("volume", "25 gal", "25 gal")]
    [InlineData("volume", "1.5 hl", "1.5 hL")]
    public void A_unit_in_the_cell_says_more_than_the_columns(string field, string cell, string typed)
    {
        var said = Row("Tank,Volume (L)", $"K1,\"{cell}\"", SheetKind.Batches);

        said.LitresOrNone(field);

        Assert.Equal(typed, said.Typed[0].Text);
    }

    [Theory]
    [InlineData("Volume (L)", "12 firkin", "volume", "unknown-unit")]
    [InlineData("Volume (firkin)", "12", "volume", "sheet-no-unit")]
    [InlineData("Volume (L)", "1.000,5", "volume", "two-separators")]
    [InlineData("Volume (L)", "a lot", "volume", "not-a-number")]
    [InlineData("Ale or lager", "wine", "beer", "sheet-word")]
    [InlineData("Filled", "31.02.2026", "filled-at", "sheet-no-day")]
    [InlineData("Filled", "03/05/2026", "filled-at", "sheet-no-order")]
    public void What_cannot_be_understood_is_a_problem_of_its_field(
        string header,
        string cell,
        string field,
        string code
    )
    {
        var said = Row($"Tank,{header}", $"K1,\"{cell}\"", SheetKind.Batches);

        said.LitresOrNone("volume");

        Assert.Equal(code, said.Problems[field].Code);
    }

    [Theory]
    [InlineData("CCT", "ConicalFermenter")]
    [InlineData("uni-tank", "PressureRatedConical")]
    [InlineData("BBT", "BrightTank")]
    [InlineData("Bright tank", "BrightTank")]
    public void Words_of_the_trade_are_known_for_what_can_be_chosen(string cell, string type) =>
        Assert.Equal(type, Row("Code,Type", $"K1,{cell}", SheetKind.Tanks).Text("type"));

    [Fact]
    public void What_is_the_same_for_every_row_stands_where_no_column_says_it()
    {
        var table = Table("Code\nK1");
        var fields = SheetFields.Of(SheetKind.Tanks, Words);
        var same = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["material"] = "Stainless",
            ["code"] = "never: a column says it",
        };
        var matching = new SheetMatching([new ColumnMatch("code")], same);

        var said = new RowReading(table, SheetMatching.FromJson(matching.ToJson()), fields, Times).Read(1);

        Assert.Equal(("K1", "Stainless"), (said.Text("code"), said.Text("material")));
    }

    [Theory]
    [InlineData("2026-03-13", "2026-03-13T12:00")]
    [InlineData("2026-03-14", "2026-03-14T00:00")] // its noon is still to come
    [InlineData("2026-03-13 15:30", "2026-03-13T15:30")]
    public void A_day_without_a_time_is_its_noon_or_today_its_beginning(string cell, string moment) =>
        Assert.Equal(moment, Row("Tank,Filled", $"K1,{cell}", SheetKind.Batches).Text("filled-at"));

    [Theory]
    [InlineData(SheetKind.Tanks)]
    [InlineData(SheetKind.Batches)]
    [InlineData(SheetKind.Cultures)]
    public void Every_column_of_a_template_is_matched_with_its_field(SheetKind kind)
    {
        var table = Table(ImportSetup.Template(kind, Words));
        var fields = SheetFields.Of(kind, Words);

        var match = new ColumnGuess(table, fields).Match(Own);

        Assert.Equal(fields.All.Select(field => field.Name), match.Columns.Select(column => column.Field));
        Assert.All(
            fields.All.Zip(match.Columns).Where(pair => pair.First is QuantityField),
            pair => Assert.NotNull(pair.Second.Unit)
        );
        var said = new RowReading(table, match, fields, Times).Read(1);
        Assert.Empty(said.Problems);
    }

    private static readonly SiteTimes Times = new(
        TimeZoneInfo.Utc,
        new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero),
        English
    );

    private static FormReader Row(string header, string row, SheetKind kind)
    {
        var (table, fields) = (Table($"{header}\n{row}"), SheetFields.Of(kind, Words));
        return new RowReading(table, new ColumnGuess(table, fields).Match(Own), fields, Times).Read(1);
    }

    private static SheetMatching Match(SheetKind kind, string header, string row) =>
        new ColumnGuess(
            Table($"\"{header.Replace(",Tank", "\",\"Tank", StringComparison.Ordinal)}\"\n{Quoted(row)}"),
            SheetFields.Of(kind, Words)
        ).Match(Own);

    private static string Quoted(string row) => row.StartsWith('K') ? row : $"\"{row}\"";

    private static string? Own(Measure measure) => UnitPart.OwnOf(measure, ReadingUnits.Metric);

    private static SheetTable Table(string text) => SheetFile.Read(Encoding.UTF8.GetBytes(text)).Value;
}

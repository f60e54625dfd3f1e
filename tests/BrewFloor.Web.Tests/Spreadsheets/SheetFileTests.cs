using System.Diagnostics;
using System.Text;
using BrewFloor.Web.Spreadsheets;

namespace BrewFloor.Web.Tests.Spreadsheets;

/// <summary>Files as people bring them: what is read is what stood there, and what can't be read is said.</summary>
public class SheetFileTests
{
    private static readonly string[] Two = ["K1", "Größe"];
    private static readonly string[] Bombs = ["sheet-unpacks", "sheet-unreadable"];

    [Theory]
    [InlineData("code,name\nK1,Größe\n")]
    [InlineData("code;name\r\nK1;Größe\r\n")]
    [InlineData("code\tname\nK1\tGröße")]
    [InlineData("sep=;\ncode;name\nK1;Größe")]
    [InlineData("\n\ncode,name\nK1,Größe\n\n\n")]
    [InlineData("code,name\n\"K1\",\"Größe\"\n")]
    public void Text_with_any_of_the_separators_is_read(string text)
    {
        var table = Read(text);

        Assert.Equal(["code", "name"], table.Rows[table.Header].Select(cell => cell.Text));
        Assert.Equal(Two, table.Rows[^1].Select(cell => cell.Text));
    }

    [Fact]
    public void Decimal_commas_are_no_separators_where_semicolons_are()
    {
        var table = Read("code;volume;height\nK1;120,5;620,0\nK2;240,5;700,5\n");

        Assert.Equal(["K2", "240,5", "700,5"], table.Rows[2].Select(cell => cell.Text));
        Assert.Equal(";", table.Notes.Separator);
    }

    [Fact]
    public void Commas_and_line_breaks_within_quotation_marks_are_part_of_the_cell()
    {
        var table = Read("code,name\nK1,\"left, by the \"\"door\"\"\nbelow\"\n");

        Assert.Equal("left, by the \"door\"\nbelow", table.At(1, 1).Text);
    }

    [Fact]
    public void What_looks_like_a_formula_is_text() => Assert.Equal("=1+1", Read("code,name\nK1,=1+1\n").At(1, 1).Text);

    [Fact]
    public void A_mark_at_the_beginning_is_no_part_of_the_first_name() =>
        Assert.Equal(
            "code",
            Read([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes("code,name\nK1,x")]).At(0, 0).Text
        );

    [Fact]
    public void What_is_not_UTF8_is_read_as_Windows_1252_and_said_to_be()
    {
        var table = Read([.. "code,name\nK1,Gr"u8, 0xF6, 0xDF, .. "e\n"u8]);

        Assert.Equal(Two, table.Rows[1].Select(cell => cell.Text));
        Assert.True(table.Notes.IsWestern);
        Assert.False(Read("code,name\nK1,Größe").Notes.IsWestern);
    }

    [Fact]
    public void Sixteen_bit_text_as_spreadsheets_save_it_is_read() =>
        Assert.Equal(
            Two,
            Read([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("code\tname\nK1\tGröße")])
                .Rows[1]
                .Select(cell => cell.Text)
        );

    [Fact]
    public void A_workbook_is_read_with_its_dates_and_the_stored_values_of_its_formulas()
    {
        var table = Read(
            Workbook.Of(
                [Workbook.Text("code"), Workbook.Text("volume"), Workbook.Text("dried"), Workbook.Text("note")],
                [
                    Workbook.Formula("CONCATENATE(\"K\",1)", "K1"),
                    Workbook.Number(0.1 + 0.2),
                    Workbook.Day(46095),
                    Workbook.Text("=HYPERLINK(1)"),
                ]
            )
        );

        Assert.Equal(["K1", "0.3", "2026-03-14", "=HYPERLINK(1)"], table.Rows[1].Select(cell => cell.Text));
        Assert.Equal(new DateTime(2026, 3, 14, 0, 0, 0, DateTimeKind.Unspecified), table.At(1, 2).On);
    }

    [Fact]
    public void Of_several_sheets_the_first_with_anything_in_it_is_read_and_named()
    {
        var table = Read(
            Workbook.Of([
                ("Cover", []),
                (
                    "Cellar",
                    [
                        [Workbook.Text("code")],
                        [Workbook.Text("K1")],
                    ]
                ),
            ])
        );

        Assert.Equal(("K1", "Cellar"), (table.At(1, 0).Text, table.Notes.Sheet));
    }

    [Fact]
    public void What_is_kept_comes_back_as_it_was_read()
    {
        var table = Read(
            Workbook.Of([Workbook.Text("code"), Workbook.Text("on")], [Workbook.Text("K1"), Workbook.Day(46095)])
        );

        var back = SheetTable.FromJson(table.ToJson());

        Assert.Equal(table.Rows.SelectMany(row => row), back.Rows.SelectMany(row => row));
        Assert.Equal(table.Notes, back.Notes);
    }

    [Theory]
    [InlineData("", "sheet-empty")]
    [InlineData(" \n,,\n", "sheet-empty")]
    [InlineData("\u0089PNG\u0000\u0001", "sheet-unreadable")]
    [InlineData("PK\u0003\u0004and nothing more", "sheet-unreadable")]
    [InlineData("PK\u0005\u0006", "sheet-unreadable")]
    public void What_is_no_spreadsheet_is_said_to_be_none(string text, string code) =>
        Assert.Equal(code, Refused(Encoding.Latin1.GetBytes(text)));

    [Fact]
    public void A_workbook_of_an_older_format_is_named_as_such() =>
        Assert.Equal("sheet-old", Refused([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1]));

    [Fact]
    public void What_is_too_large_is_refused_and_what_just_fits_is_not()
    {
        Assert.Equal("sheet-too-large", Refused(new byte[SheetLimits.Bytes + 1]));
        Assert.Equal("sheet-rows", Refused(Lines(SheetLimits.Rows + 1)));
        Assert.Equal(SheetLimits.Rows + 1, Read(Lines(SheetLimits.Rows)).Rows.Count);
        Assert.Equal("sheet-columns", Refused(Wide(SheetLimits.Columns + 1)));
        Assert.Equal(SheetLimits.Columns, Read(Wide(SheetLimits.Columns)).Columns);
        Assert.Equal(
            "sheet-cell-long",
            Refused(Encoding.UTF8.GetBytes("a,b\n1," + new string('x', SheetLimits.Letters + 1)))
        );
    }

    [Fact]
    public void A_bomb_is_refused_in_less_than_a_second_and_without_filling_memory()
    {
        var bomb = Workbook.Bomb(megabytes: 600);
        Assert.InRange(bomb.Length, 1, SheetLimits.Bytes);
        Refused(Workbook.Bomb(megabytes: 31)); // what only the first time costs
        var before = GC.GetAllocatedBytesForCurrentThread();
        var clock = Stopwatch.StartNew();

        Assert.Equal("sheet-unpacks", Refused(bomb));

        Assert.InRange(clock.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(1));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 64 * 1024 * 1024);
    }

    [Fact]
    public void A_bomb_that_lies_about_its_size_is_refused_too()
    {
        var bomb = Workbook.Bomb(megabytes: 40);
        var said = BitConverter.GetBytes(40 * 1024 * 1024);
        for (var at = 0; at + 4 <= bomb.Length; at++)
        {
            if (bomb.AsSpan(at, 4).SequenceEqual(said))
            {
                BitConverter.GetBytes(1000).CopyTo(bomb, at);
            }
        }

        Assert.Contains(Refused(bomb), Bombs);
    }

    [Fact]
    public void Entities_that_multiply_are_not_followed() =>
        Assert.Equal(
            "sheet-unreadable",
            Refused(
                Workbook.WithSheet(
                    "<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;\">]><worksheet>&b;</worksheet>"
                )
            )
        );

    [Fact]
    public void A_workbook_cut_off_or_spoiled_anywhere_is_read_or_refused_and_never_fails()
    {
        var whole = Workbook.Of(
            [Workbook.Text("code"), Workbook.Text("on")],
            [Workbook.Text("K1"), Workbook.Day(46095)]
        );
        for (var at = 0; at < whole.Length; at += 7)
        {
            SheetFile.Read(whole.AsMemory(0, at));
            var spoiled = whole.ToArray();
            spoiled[at] ^= 0x55;
            SheetFile.Read(spoiled);
        }

        Assert.Equal("K1", Read(whole).At(1, 0).Text);
    }

    private static byte[] Lines(int rows) =>
        Encoding.UTF8.GetBytes("code,name\n" + string.Concat(Enumerable.Range(0, rows).Select(row => $"K{row},x\n")));

    private static byte[] Wide(int columns) =>
        Encoding.UTF8.GetBytes(string.Join(',', Enumerable.Range(0, columns).Select(column => $"c{column}")));

    private static SheetTable Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    private static SheetTable Read(byte[] file) => SheetFile.Read(file).Value;

    private static string Refused(byte[] file) => SheetFile.Read(file).Refusal!.Code;
}

using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>The code against the table written by hand, cell by cell.</summary>
public class MatrixTests
{
    private static readonly string[] Levels = ["goes", "caution", "stop", "stop!", "impossible"];

    [Fact]
    public void The_floor_says_in_every_cell_what_stands_there_by_hand()
    {
        string[] differences = [.. Differences(Matrix.ByHand(), MatrixEntries.All)];

        Assert.True(differences.Length is 0, string.Join('\n', differences));
    }

    [Fact]
    public void Every_row_is_tried() => Assert.Equal(Matrix.ByHand().Count, MatrixEntries.All.Length);

    [Fact]
    public void The_comparison_can_fail()
    {
        var wrong = Matrix.ByHand().Select(row => row with { Cells = [.. row.Cells.Select(_ => "goes")] }).ToArray();

        Assert.Contains(
            "filled, wort of a new batch, holds beer: goes by hand, impossible tank-occupied by the code",
            Differences(wrong, MatrixEntries.All)
        );
    }

    [Fact]
    public void Every_kind_has_a_row() => Assert.Empty(WithoutRow(EntryKinds.ByName.Keys));

    [Fact]
    public void The_check_of_the_rows_can_fail() => Assert.Equal(["krausened"], WithoutRow(["krausened", "filled"]));

    [Fact]
    public void No_cell_is_blank() => Assert.Empty(Matrix.ByHand().SelectMany(Blank));

    [Theory]
    [InlineData("")]
    [InlineData("perhaps")]
    [InlineData("stop")] // which one?
    [InlineData("goes over-total")]
    public void The_check_of_the_cells_can_fail(string cell) =>
        Assert.Equal(["filled: empty"], Blank(("filled", "", [cell, .. Enumerable.Repeat("goes", 8)])));

    private static IEnumerable<string> Differences(
        IEnumerable<(string Kind, string What, string[] Cells)> byHand,
        IReadOnlyList<Tried> tried
    ) =>
        from rows in byHand.Zip(tried)
        let name = $"{rows.First.Kind}, {rows.First.What}"
        from difference in (rows.First.Kind, rows.First.What) == (rows.Second.Kind, rows.Second.What)
            ? Differences(name, rows.First.Cells, rows.Second)
            : [$"{name} is tried as {rows.Second.Kind}, {rows.Second.What}"]
        select difference;

    private static IEnumerable<string> Differences(string name, string[] cells, Tried tried) =>
        from pair in cells.Zip(Matrix.Conditions)
        let code = Matrix.Says(tried, pair.Second.Floor)
        where !string.Equals(pair.First, code, StringComparison.Ordinal)
        select $"{name}, {pair.Second.Name}: {pair.First} by hand, {code} by the code";

    private static IEnumerable<string> WithoutRow(IEnumerable<string> kinds) =>
        kinds.Except(Matrix.ByHand().Select(row => row.Kind));

    private static IEnumerable<string> Blank((string Kind, string What, string[] Cells) row) =>
        Matrix
            .Conditions.Where((_, i) => i >= row.Cells.Length || !IsVerdict(row.Cells[i]))
            .Select(c => $"{row.Kind}: {c.Name}");

    private static bool IsVerdict(string cell) =>
        cell.Split(' ') is [var level, .. var codes]
        && Levels.Contains(level)
        && codes.Length == (level is "goes" ? 0 : 1);
}

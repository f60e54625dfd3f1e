using System.Security.Cryptography;
using System.Text;
using BrewFloor.Store.Spreadsheets;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What becomes of a row.</summary>
public enum Fate
{
    Added,
    AlreadyThere,
    CannotBe,
    Skipped,
}

/// <summary>A row and its fate.</summary>
/// <param name="Number">As the spreadsheet counts.</param>
/// <param name="Called">Its tank, beer or yeast; empty: it has no name.</param>
/// <param name="Words">What was understood; of a row that can't be, everything that is wrong with it.</param>
public sealed record RowFate(int Number, Fate Fate, string Called, IReadOnlyList<string> Words);

/// <summary>Every row's fate, and what the rows that can be would bring.</summary>
public sealed record DryRun(IReadOnlyList<RowFate> Rows, Brought Brought)
{
    public int Count(Fate fate) => Rows.Count(row => row.Fate == fate);

    /// <summary>The same as long as every row's fate is: what was seen and what is imported are compared by it.</summary>
    public string Seal
    {
        get
        {
            var all = string.Join('\n', Rows.Select(row => $"{row.Number} {row.Fate} {string.Join('|', row.Words)}"));
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)))[..32];
        }
    }
}

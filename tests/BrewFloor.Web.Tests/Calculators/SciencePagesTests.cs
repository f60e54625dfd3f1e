using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Calculators;

/// <summary>
/// The science pages say what the calculators compute. To make them anew: run these tests and copy the folder they name.
/// </summary>
public sealed class SciencePagesTests
{
    public static TheoryData<string> Files => [.. SciencePages.All];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_page_is_the_one_made_from_the_calculators(string file)
    {
        var made = SciencePages.Made(file);
        if (IsSame(file, made))
        {
            return;
        }

        var fresh = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "science")).FullName;
        File.WriteAllText(Path.Combine(fresh, file), made);
        Assert.Fail(
            $"{SciencePages.Folder}{file} differs: cp {Path.GetRelativePath(Tree.Root, fresh)}/* {SciencePages.Folder}"
        );
    }

    [Fact]
    public void A_page_that_says_something_else_is_found()
    {
        var made = SciencePages.Made("yeast.md");

        Assert.False(IsSame("yeast.md", made.Replace("McCaig", "Somebody", StringComparison.Ordinal)));
        Assert.False(IsSame("nowhere.md", made));
    }

    [Fact]
    public void What_is_written_by_hand_stays() =>
        Assert.StartsWith(
            Tree.Read("docs/science/tanks.md").Split(SciencePages.Mark)[0],
            SciencePages.Made("tanks.md"),
            StringComparison.Ordinal
        );

    private static bool IsSame(string file, string made) =>
        Tree.Has(SciencePages.Folder + file)
        && string.Equals(Tree.Read(SciencePages.Folder + file), made, StringComparison.Ordinal);
}

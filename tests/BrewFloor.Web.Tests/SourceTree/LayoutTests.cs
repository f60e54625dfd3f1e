using System.Text.RegularExpressions;

namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>What the tree looks like: short files, folders named after the trade, names that say something.</summary>
public partial class LayoutTests
{
    private static readonly string[] EmptyFolderNames =
    [
        "Services",
        "Helpers",
        "Managers",
        "Utils",
        "Utilities",
        "Common",
        "Shared",
        "Core",
        "Base",
        "Impl",
        "Dto",
        "Dtos",
        "Models",
        "Interfaces",
        "Infrastructure",
    ];

    [Fact]
    public void No_file_is_longer_than_one_idea() =>
        Assert.DoesNotContain(
            Code().Where(file => !file.EndsWith("/FormCases.cs", StringComparison.Ordinal)), // a table: a line a form
            file => IsTooLong(file, Lines(file))
        );

    [Theory]
    [InlineData("src/BrewFloor.Domain/Tanks/Filled.cs", 300, false)]
    [InlineData("src/BrewFloor.Domain/Tanks/Filled.cs", 301, true)]
    [InlineData("src/BrewFloor.Web/Tanks/TankPage.razor", 131, true)]
    [InlineData("src/BrewFloor.Web/Tanks/TankPage.razor.cs", 201, true)]
    [InlineData("src/BrewFloor.Web/Tanks/TankPage.razor.cs", 200, false)]
    [InlineData("src/BrewFloor.Store/Migrations/First.cs", 5000, false)] // written by a tool
    public void The_length_check_can_fail(string file, int lines, bool tooLong) =>
        Assert.Equal(tooLong, IsTooLong(file, lines));

    [Fact]
    public void Folders_are_subjects_of_the_trade() => Assert.DoesNotContain(Code(), HasEmptyFolderName);

    [Theory]
    [InlineData("src/BrewFloor.Domain/Tanks/Filled.cs", false)]
    [InlineData("src/BrewFloor.Domain/Services/TankService.cs", true)]
    [InlineData("src/BrewFloor.Web/Tanks/Helpers/Rounding.cs", true)]
    public void The_folder_check_can_fail(string file, bool empty) => Assert.Equal(empty, HasEmptyFolderName(file));

    [Fact]
    public void File_names_say_what_is_in_them() => Assert.DoesNotContain(Code(), HasEmptyName);

    [Theory]
    [InlineData("src/BrewFloor.Domain/Tanks/TankState.cs", false)]
    [InlineData("src/BrewFloor.Domain/House/Based.cs", false)]
    [InlineData("src/BrewFloor.Domain/Tanks/TankManager.cs", true)]
    [InlineData("src/BrewFloor.Web/Tanks/TankModel.razor.cs", true)]
    [InlineData("src/BrewFloor.Web/Tanks/Utils.cs", true)]
    public void The_name_check_can_fail(string file, bool empty) => Assert.Equal(empty, HasEmptyName(file));

    [Fact]
    public void Markup_and_code_lie_in_two_files() =>
        Assert.DoesNotContain(Tree.FilesIn("src/", ".razor"), file => HasCodeBlock(Tree.Read(file)));

    [Theory]
    [InlineData("<p>@code</p>", false)]
    [InlineData("<p></p>\n@code {", true)]
    [InlineData("@functions {", true)]
    public void The_code_block_check_can_fail(string text, bool has) => Assert.Equal(has, HasCodeBlock(text));

    [Fact]
    public void Pages_ask_the_store_and_never_its_tables() =>
        Assert.DoesNotContain(
            Tree.FilesIn("src/BrewFloor.Web/", ".razor", ".razor.cs"),
            file => TouchesTables(Tree.Read(file))
        );

    [Theory]
    [InlineData("public partial class TankPage(IDbContextFactory<FloorDb> databases)", true)]
    [InlineData("@using Microsoft.EntityFrameworkCore", true)]
    [InlineData("public partial class TankPage(FloorLog log)", false)]
    public void The_page_check_can_fail(string line, bool touches) => Assert.Equal(touches, TouchesTables(line));

    private static IEnumerable<string> Code() =>
        Tree.FilesIn("src/", ".cs", ".razor").Concat(Tree.FilesIn("tests/", ".cs", ".razor"));

    private static int Lines(string file) => Tree.Read(file).AsSpan().TrimEnd('\n').Count('\n') + 1;

    private static bool IsTooLong(string file, int lines) => !IsMigration(file) && lines > Limit(file);

    private static int Limit(string file) =>
        file.EndsWith(".razor", StringComparison.Ordinal) ? 130
        : file.EndsWith(".razor.cs", StringComparison.Ordinal) ? 200
        : 300;

    private static bool IsMigration(string file) => file.Contains("/Migrations/", StringComparison.Ordinal);

    private static bool HasEmptyFolderName(string file) => file.Split('/')[..^1].Any(EmptyFolderNames.Contains);

    private static bool HasEmptyName(string file) =>
        !IsMigration(file) && EmptyName().IsMatch(Path.GetFileName(file).Split('.')[0]);

    private static bool HasCodeBlock(string text) => CodeBlock().IsMatch(text);

    private static bool TouchesTables(string text) => Tables().IsMatch(text);

    [GeneratedRegex(
        "(Manager|Helpers?|Utils?|Common|Base|Impl|Dto|Model|Info|Data)$",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex EmptyName();

    [GeneratedRegex(@"^\s*@(code|functions)\b", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CodeBlock();

    [GeneratedRegex(@"\bFloorDb\b|\bEntityFrameworkCore\b", RegexOptions.None, 1000)]
    private static partial Regex Tables();
}

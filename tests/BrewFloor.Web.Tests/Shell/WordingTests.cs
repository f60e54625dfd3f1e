using System.Text.RegularExpressions;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Backups;
using BrewFloor.Web.Doctor;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tests.Shell;

/// <summary>No page ever lacks a word: what the sources ask for stands in the resource files.</summary>
public partial class WordingTests
{
    private static readonly IReadOnlyList<string> Web = AskedTexts.Sources("src/BrewFloor.Web/");
    private static readonly IReadOnlyList<string> Floor = AskedTexts.Sources(
        "src/BrewFloor.Domain/",
        "src/BrewFloor.Store/"
    );
    private static readonly IReadOnlyDictionary<string, string[]> Constants = AskedTexts.Constants(Floor);

    // Beginnings of keys that a value of an enum, or of a few words, is put behind.
    private static readonly Dictionary<string, string[]> Behind = new(StringComparer.Ordinal)
    {
        ["state-soil-"] = Enum.GetNames<Soil>(),
        ["state-stage-"] = [.. Enum.GetNames<Stage>(), "FermentingFar"],
        ["role-"] = Enum.GetNames<Role>(),
        ["bay-"] =
        [
            .. Enum.GetNames<Holding>()
                .Except([nameof(Holding.Nothing), nameof(Holding.Unknown), nameof(Holding.Beer)]),
        ],
        ["group-"] = ["overdue", "due", "soon", "none", "off"],
        ["show-"] = ["all", "beer", "ready", "clean", "off"],
        ["tank-"] = ["identity", "sizes", "pressure"],
        ["paper-"] = Enum.GetNames<Web.Labels.LabelPaper>(),
        ["house-subject-"] = Enum.GetNames<HouseSubject>(),
        ["house-in-"] = Enum.GetNames<HouseUnit>(),
        ["house-basis-"] = Enum.GetNames<HouseBasis>(),
        ["house-name-"] = [.. HouseNumbers.All.Select(number => number.Key)],
        ["house-why-"] = [.. HouseNumbers.All.Select(number => number.Key)],
        ["tokens-scope-"] = [.. Store.People.Tokens.Scopes],
        ["security-kind-"] = Enum.GetNames<Store.People.SecurityKind>(),
        ["theme-"] = ["sunlight", "device"],
        ["fact-"] = KeysGiven("TankFacts"),
        ["batch-"] = KeysGiven("BatchWords"),
        ["yeast-"] = KeysGiven("YeastWords"),
        ["item-"] = KeysGiven("ItemWords"),
        ["items-"] = [.. Enum.GetNames<ItemKind>().Select(name => name.ToLowerInvariant())],
        ["doctor-of-"] = ["backup", "backup-disk", "clock", "database", "disk", "proxy", "zones"],
        ["doctor-is-"] = [.. Enum.GetNames<Health>().Select(name => name.ToLowerInvariant())],
        ["forecast-sign-"] = Enum.GetNames<SignKind>(),
        ["forecast-on-"] = Enum.GetNames<OutlookBasis>(),
        ["restore-said-"] = [.. SetupRestorePage.Codes, "other"],
        ["doctor-says-"] = FindingCodes,
        ["import-kind-"] = Enum.GetNames<Store.Spreadsheets.SheetKind>(),
        ["import-order-"] = Enum.GetNames<Web.Spreadsheets.DateOrder>(),
        ["import-fate-"] = Enum.GetNames<Web.Spreadsheets.Fate>(),
    };

    // Codes of findings are words with a hyphen; this one is a thing that is looked at.
    private static string[] FindingCodes =>
        [
            .. AskedTexts
                .Sources("src/BrewFloor.Web/Doctor/")
                .SelectMany(source => FindingCode().Matches(source))
                .Select(match => match.Groups["code"].Value)
                .Where(code => code is not "backup-disk")
                .Distinct(StringComparer.Ordinal),
        ];

    [GeneratedRegex(
        "\"(?<code>(database|clocks|disk|zones|proxy|backup)-[a-z-]+)\"",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex FindingCode();

    [Fact]
    public void Every_text_a_page_asks_for_is_there() =>
        Assert.Empty(Web.SelectMany(AskedTexts.OfPages).Concat(Completed()).Except(Texts.Pages.Keys).Order());

    [Fact]
    public void Every_beginning_of_a_page_text_is_known_to_this_test() =>
        Assert.Empty(Web.SelectMany(AskedTexts.BeginningsOfPages).Except(Behind.Keys));

    [Fact]
    public void Every_text_a_form_or_a_timeline_asks_for_is_there() =>
        Assert.Empty(
            Web.SelectMany(AskedTexts.OfEntries).Concat(OfKinds()).Concat(OfChoices()).Except(Texts.Entries.Keys)
        );

    [Fact]
    public void Every_form_has_the_texts_of_its_fields_and_cautions() =>
        Assert.Empty(EntryForms.ByKind.Values.SelectMany(OfForm).Distinct().Except(Texts.Entries.Keys));

    [Fact]
    public void Every_objection_has_its_sentence_and_its_short_name() =>
        Assert.Empty(
            Floor
                .SelectMany(source => AskedTexts.OfObjections(source, Constants))
                .SelectMany(code => (string[])[code, code + ".short"])
                .Except(Texts.Objections.Keys)
        );

    [Fact]
    public void Every_refusal_has_its_sentence() =>
        Assert.Empty(
            AskedTexts
                .Sources("src/BrewFloor.Brewing/", "src/BrewFloor.Domain/", "src/BrewFloor.Web/")
                .SelectMany(AskedTexts.OfRefusals)
                .Select(code => "refusal." + code)
                .Except(Texts.Pages.Keys)
        );

    [Fact]
    public void Every_job_has_its_verb_and_its_reason()
    {
        var asked = Floor.SelectMany(AskedTexts.OfJobs).ToArray();
        Assert.Empty(asked.Except(Texts.Jobs.Keys));
        Assert.DoesNotContain(
            asked.Where(rule => !rule.Contains(".because.", StringComparison.Ordinal)),
            rule => !Texts.Jobs.Keys.Any(key => key.StartsWith(rule + ".because", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Every_place_in_a_text_is_filled_by_somebody()
    {
        var sources = string.Join('\n', Web.Concat(Floor).Concat(AskedTexts.Sources("src/BrewFloor.Brewing/")));
        var named = Regex
            .Matches(sources, "\"(?<name>[a-z_]+)\"", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5))
            .Select(match => match.Groups["name"].Value)
            .ToHashSet(StringComparer.Ordinal);
        IEnumerable<KeyValuePair<string, string>> all =
        [
            .. Texts.Pages,
            .. Texts.Entries,
            .. Texts.Objections,
            .. Texts.Jobs,
        ];
        Assert.DoesNotContain(
            all.SelectMany(text => Texts.PlacesIn(text.Value).Select(place => (text.Key, place))),
            place => !named.Contains(place.place)
        );
    }

    [Fact]
    public void The_checks_can_fail()
    {
        const string Source = """
            <p>@wording["nowhere"]</p> @wording[IsOld ? "old-one" : "new-one"] @wording["state-" + state]
            words.Entry("line.nowhere") Hint = "hint.nowhere" new Refusal("no-such", "x", "", "") Objection.Stop("never-heard", x)
            Objection.Caution(Heard, x) Objection.Caution(Unheard, x) Objection.Impossible($"unknown-{kind}", x)
            const string Heard = "heard-of"; const string Rule = "whistle"; new("variant", "loud")
            """;
        Assert.Equal(["nowhere", "old-one", "new-one"], AskedTexts.OfPages(Source));
        Assert.Equal(["state-"], AskedTexts.BeginningsOfPages(Source));
        Assert.Equal(["line.nowhere", "hint.nowhere"], AskedTexts.OfEntries(Source));
        Assert.Equal(["no-such"], AskedTexts.OfRefusals(Source));
        Assert.Equal(
            ["never-heard", "heard-of", "?Unheard", "unknown-tank", "unknown-batch", "unknown-culture", "unknown-item"],
            AskedTexts.OfObjections(Source, AskedTexts.Constants([Source]))
        );
        Assert.Equal(["whistle", "whistle.because.loud"], AskedTexts.OfJobs(Source));
        Assert.Equal(["volume"], Texts.PlacesIn("{volume} in it"));
    }

    private static IEnumerable<string> Completed() =>
        Behind.SelectMany(beginning => beginning.Value.Select(value => beginning.Key + value));

    private static IEnumerable<string> OfKinds() =>
        EntryKinds
            .ByName.Keys.Concat(EntryForms.ByKind.Keys)
            .SelectMany(kind => (string[])[kind + ".verb", kind + ".happened"]);

    // Every enum that has a text for one of its values has one for all.
    private static IEnumerable<string> OfChoices() =>
        typeof(EntryKinds)
            .Assembly.GetTypes()
            .Where(type =>
                type.IsEnum
                && Texts.Entries.Keys.Any(key => key.StartsWith($"choice.{type.Name}.", StringComparison.Ordinal))
            )
            .SelectMany(type => Enum.GetNames(type).Select(value => $"choice.{type.Name}.{value}"));

    private static IEnumerable<string> OfForm(EntryForm form)
    {
        var floor = new FormFloor(DateTimeOffset.UnixEpoch, Reader.Stranger)
        {
            Rules = HouseRules.Defaults(TimeZoneInfo.Utc),
        };
        return [.. form.Fields(floor).SelectMany(OfField), .. form.Cautions(floor)];
    }

    private static IEnumerable<string> OfField(Field field) =>
        [
            field.Label,
            .. field.Hint is null ? Array.Empty<string>() : [field.Hint],
            .. field is RowsField rows ? rows.Fields.SelectMany(OfField) : [],
        ];

    private static string[] KeysGiven(string file) =>
        [
            .. AskedTexts
                .Sources("src/BrewFloor.Web/")
                .Where(source => source.Contains($"class {file}", StringComparison.Ordinal))
                .SelectMany(source =>
                    Regex.Matches(
                        source,
                        """yield return \("(?<key>[a-z-]+)",""",
                        RegexOptions.ExplicitCapture,
                        TimeSpan.FromSeconds(1)
                    )
                )
                .Select(match => match.Groups["key"].Value),
        ];
}

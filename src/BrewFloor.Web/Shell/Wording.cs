using System.Globalization;
using System.Resources;
using System.Text;
using BrewFloor.Brewing;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Shell;

/// <summary>Every text a person reads, in their language, units and time zone.</summary>
/// <remarks>One file of resources a subject: pages, entries, objections, jobs. Codes and rules never carry sentences themselves.</remarks>
public sealed class Wording(Figures figures, CultureInfo culture)
{
    private static readonly ResourceManager Pages = Texts("Pages");
    private static readonly ResourceManager Entries = Texts("Entries");
    private static readonly ResourceManager ObjectionTexts = Texts("Objections");
    private static readonly ResourceManager JobTexts = Texts("Jobs");
    private static readonly ResourceManager ApiTexts = Texts("Api");
    private static readonly ResourceManager CalculatorTexts = Texts("Calculators");

    public Figures Figures => figures;

    /// <summary>Its code in HTML: "de".</summary>
    public string Language => culture.TwoLetterISOLanguageName;

    /// <summary>As a list of words is sorted in this language.</summary>
    public StringComparer Order => StringComparer.Create(culture, ignoreCase: false);

    /// <summary>A text of a page. A missing one is a bug, and a test names it.</summary>
    public string this[string key] => Of(Pages, key);

    /// <summary>A text of a page with its places filled in: <c>{volume}</c>.</summary>
    public string this[string key, params ReadOnlySpan<Number> numbers] => Filled(Of(Pages, key), numbers);

    /// <summary>A text that stands alone elsewhere, within a sentence: small, but for German, whose nouns never are.</summary>
    public string InSentence(string text) => Language is "de" ? text : text.ToLower(culture);

    /// <summary>The verb on a slab: "Take gravity".</summary>
    public string Verb(string kind) => Of(Entries, kind + ".verb");

    public bool HasVerb(string kind) => HasEntry(kind + ".verb");

    /// <summary>What a timeline says happened: "Gravity".</summary>
    public string Happened(string kind) => Of(Entries, kind + ".happened");

    public string Entry(string key) => Of(Entries, key);

    /// <summary>All values of an enum, for slabs or a list.</summary>
    public IReadOnlyList<(string Value, string Text)> Choices<TEnum>()
        where TEnum : struct, Enum =>
        [.. Enum.GetValues<TEnum>().Select(value => (value.ToString(), Entry($"choice.{typeof(TEnum).Name}.{value}")))];

    /// <summary>Words that are posted as they are, with the texts under a common beginning.</summary>
    public IReadOnlyList<(string Value, string Text)> Choices(IEnumerable<string> values, string texts) =>
        [.. values.Select(value => (value, Entry(texts + value)))];

    public bool HasEntry(string key) => Entries.GetString(key, culture) is not null;

    public string Entry(string key, params ReadOnlySpan<Number> numbers) => Filled(Of(Entries, key), numbers);

    /// <summary>The short name at the head of an objection.</summary>
    public string Head(Objection objection) => Head(objection.Code);

    public string Head(string code) => Of(ObjectionTexts, code + ".short");

    public string Say(Objection objection) =>
        Filled(Of(ObjectionTexts, objection.Code), [.. objection.Numbers.Select(number => Put(objection, number))]);

    /// <summary>The way out, if there is one: "Sanitize it first".</summary>
    public string? WayOut(Objection objection) =>
        ObjectionTexts.GetString(objection.Code + ".fix", culture) is { } text
            ? Filled(text, [.. objection.Numbers])
            : null;

    /// <summary>What was wrong with what was typed, what was expected, what to do.</summary>
    public string Say(Refusal refusal) =>
        Filled(
            Of(Pages, "refusal." + refusal.Code),
            [
                new("what", refusal.What),
                new("from", refusal.From),
                new("to", refusal.To),
                new("unit", refusal.Unit),
                new("row", refusal.Row),
            ]
        );

    /// <summary>What a program's author reads.</summary>
    public string Api(string key, params ReadOnlySpan<Number> numbers) => Filled(Of(ApiTexts, key), numbers);

    /// <summary>What a calculator asks, gives, assumes and warns of: "slurry.question", "input.beer".</summary>
    public string Calculator(string key) => Of(CalculatorTexts, key);

    public string Verb(Job job) => Of(JobTexts, job.Rule);

    public string Because(Job job) =>
        job.Because.FirstOrDefault(n => n.Name is "variant").Value is string variant
            ? Filled(Of(JobTexts, job.Rule + ".because." + variant), [.. job.Because])
            : Filled(Of(JobTexts, job.Rule + ".because"), [.. job.Because]);

    // A word of the rules, not one that a person typed, has a text of its own: "film-hurt.by.rust".
    private Number Put(Objection objection, Number number) =>
        number.Value is string word
        && ObjectionTexts.GetString($"{objection.Code}.{number.Name}.{word}", culture) is { } text
            ? number with
            {
                Value = text,
            }
            : number;

    private static ResourceManager Texts(string name) => new("BrewFloor.Web.Wording." + name, typeof(Wording).Assembly);

    /// <summary>The word for a unit that is counted: "days", "piece".</summary>
    internal static string UnitOf(string unit, CultureInfo culture) => In(culture, Pages, "unit-" + unit);

    private string Of(ResourceManager texts, string key) => In(culture, texts, key);

    private static string In(CultureInfo culture, ResourceManager texts, string key) =>
        texts.GetString(key, culture) ?? throw new MissingManifestResourceException($"No text for \"{key}\".");

    private string Filled(string text, ReadOnlySpan<Number> numbers)
    {
        var filled = new StringBuilder(text);
        foreach (var number in numbers)
        {
            filled.Replace("{" + number.Name + "}", figures.Of(number.Value));
        }

        return filled.ToString();
    }
}

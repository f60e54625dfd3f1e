using BrewFloor.Brewing;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.House;

/// <summary>The numbers the club may change, what each means, and who changed which when.</summary>
public sealed partial class HouseRulesPage(Wording wording, HouseKeeping house, Cautions cautions)
{
    private static readonly IGrouping<HouseSubject, HouseNumber>[] Subjects =
    [
        .. HouseNumbers.All.GroupBy(number => number.Subject),
    ];

    private HouseRules _now = HouseRules.Defaults(TimeZoneInfo.Utc); // rendered once while the house is asked
    private HouseRules _opened = HouseRules.Defaults(TimeZoneInfo.Utc);
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);
    private IReadOnlyList<(string Code, string Heard)> _cautions = [];
    private IReadOnlyList<HouseChange> _history = [];
    private bool _mayChange;
    private bool _isOvertaken;
    private bool _isKept;

    [SupplyParameterFromForm(FormName = "rules")]
    private RulesInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        var isSent = Input is not null;
        Input ??= new();
        _mayChange = Policies.RoleOf(Http.User) is Role.Owner;
        await ReadAsync();
        if (!isSent)
        {
            Show(_now);
            await ReadCautionsAsync();
        }
    }

    private async Task SaveAsync()
    {
        await KeepAsync();
        await ReadCautionsAsync(); // once, and of what stands now: it looks through the whole log
    }

    private async Task KeepAsync()
    {
        if (!_mayChange)
        {
            Http.Response.StatusCode = StatusCodes.Status403Forbidden;
            return;
        }

        var typed = HouseNumbers.Read(_opened, key => Input!.Numbers.TryGetValue(key, out var text) ? text : null);
        _problems = typed.Problems;
        if (_problems.Count > 0)
        {
            Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return;
        }

        var rules = typed.Rules with
        {
            Version = Input!.Version,
            CountsCultures = Input.Counts,
            SilentCautions = [.. Input.Silent ?? []],
        };
        _isKept = await house.ChangeAsync(rules, Policies.IdOf(Http.User), Http.RequestAborted);
        _isOvertaken = !_isKept;
        Http.Response.StatusCode = _isKept ? StatusCodes.Status200OK : StatusCodes.Status409Conflict;
        await ReadAsync();
        if (_isKept)
        {
            Show(_now);
        }
        else
        {
            TakeOver();
        }
    }

    // What nobody typed over becomes theirs; the rest stands with theirs beside it, and kept again it was seen.
    private void TakeOver()
    {
        foreach (
            var number in HouseNumbers.All.Where(number =>
                string.Equals(TypedOf(number), number.Text(_opened), StringComparison.Ordinal)
            )
        )
        {
            Input!.Numbers[number.Key] = number.Text(_now);
        }

        // A box is ticked or not: where both changed it, both made the same of it.
        var (was, ticked, silent) = (
            Codes(_opened.SilentCautions),
            Codes(Input!.Silent ?? []),
            Codes(_now.SilentCautions)
        );
        silent.UnionWith(ticked.Except(was, StringComparer.Ordinal));
        silent.ExceptWith(was.Except(ticked, StringComparer.Ordinal));
        Input.Silent = [.. silent];
        Input.Counts = Input.Counts == _opened.CountsCultures ? _now.CountsCultures : Input.Counts;
        Input.Version = _now.Version;
    }

    private static HashSet<string> Codes(IEnumerable<string> codes) => codes.ToHashSet(StringComparer.Ordinal);

    private async Task ReadAsync()
    {
        _now = await house.RulesAsync(Http.RequestAborted);
        var versions = await house.HistoryAsync(Http.RequestAborted);
        _opened = versions.FirstOrDefault(version => version.Version == Input!.Version)?.Rules ?? _now;
        _history = [.. versions.Zip(versions.Skip(1), (now, before) => HouseChange.Of(now, before.Rules, wording))];
    }

    private async Task ReadCautionsAsync()
    {
        var heard = await cautions.WavedThroughAsync(Http.RequestAborted);
        _cautions =
        [
            .. _now.SilentCautions.Select(code => (code, "")),
            .. heard.Select(caution =>
                (caution.Code, wording["house-caution-heard", new("count", caution.Count), new("heard", caution.Heard)])
            ),
        ];
    }

    private void Show(HouseRules rules) =>
        Input = new()
        {
            Version = rules.Version,
            Numbers = HouseNumbers.All.ToDictionary(
                number => number.Key,
                number => number.Text(rules),
                StringComparer.Ordinal
            ),
            Counts = rules.CountsCultures,
            Silent = [.. rules.SilentCautions],
        };

    private string TypedOf(HouseNumber number) =>
        Input!.Numbers.TryGetValue(number.Key, out var text) ? text : number.Text(_now);

    private string? TheirsOf(HouseNumber number) =>
        _isOvertaken && !string.Equals(TypedOf(number), number.Text(_now), StringComparison.Ordinal)
            ? number.Text(_now)
            : null;

    private string CautionName(string code) => wording.Head(Objection.Caution(code));

    public sealed class RulesInput
    {
        public int Version { get; set; }

        public IDictionary<string, string> Numbers { get; set; } =
            new Dictionary<string, string>(StringComparer.Ordinal);

        public bool Counts { get; set; }

        /// <summary>Null: none is ticked.</summary>
        public IList<string>? Silent { get; set; }
    }
}

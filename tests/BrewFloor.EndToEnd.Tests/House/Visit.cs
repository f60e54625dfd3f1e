using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>Somebody in front of a browser: opens, reads, types under a label, chooses, presses. Nothing else gets in.</summary>
/// <remarks>Whatever the browser complains about on the way, a broken script or a forbidden style, fails the test at its end.</remarks>
public sealed class Visit : IAsyncDisposable
{
    private const int Patience = 15_000;

    private readonly IBrowserContext _context;
    private readonly List<string> _complaints = [];
    private string? _forgiven;

    private readonly string _address;

    private Visit(IBrowserContext context, IPage page, string address) =>
        (_context, Page, _address) = (context, page, address);

    public IPage Page { get; }

    public ILocator Main => Page.Locator("main");

    public static async Task<Visit> BeginAsync(IBrowserContext context, Screen screen, string address)
    {
        context.SetDefaultTimeout(Patience);
        if (screen.Theme is { } theme)
        {
            await context.AddCookiesAsync([
                new()
                {
                    Name = "theme",
                    Value = theme,
                    Url = address,
                },
            ]);
        }

        var visit = new Visit(context, await context.NewPageAsync(), address);
        visit.Listen();
        return visit;
    }

    public async Task SignInAsync(string name)
    {
        await OpenAsync("/sign-in");
        await TypeAsync("Name", name);
        await TypeAsync("Password", FloorApp.Password);
        await PressAsync("Sign in");
        await Page.WaitForURLAsync(url => !url.Contains("sign-in", StringComparison.Ordinal));
    }

    public async Task SignInFailsAsync(string name)
    {
        await OpenAsync("/sign-in");
        await TypeAsync("Name", name);
        await TypeAsync("Password", FloorApp.Password);
        await PressAsync("Sign in");
        await SeesAsync("Name or password");
    }

    /// <summary>This browser's device can keep passkeys, and its owner always agrees.</summary>
    public async Task HavePasskeysAsync()
    {
        var device = await _context.NewCDPSessionAsync(Page);
        await device.SendAsync("WebAuthn.enable");
        await device.SendAsync(
            "WebAuthn.addVirtualAuthenticator",
            new()
            {
                ["options"] = new
                {
                    protocol = "ctap2",
                    transport = "internal",
                    hasResidentKey = true,
                    hasUserVerification = true,
                    isUserVerified = true,
                    automaticPresenceSimulation = true,
                },
            }
        );
    }

    public Task<string> StorageAsync() => _context.StorageStateAsync();

    /// <param name="path">Of this floor, or the address of another.</param>
    public async Task<IResponse> OpenAsync(string path) =>
        (
            await Page.GotoAsync(
                path.StartsWith('/') ? _address + path : path,
                new() { WaitUntil = WaitUntilState.Load }
            )
        )!;

    /// <summary>As a page stands when our script was lost on the way; what examines the page still runs.</summary>
    public Task WithoutFloorScriptAsync() =>
        Page.RouteAsync("**/floor*.js", route => route.FulfillAsync(new() { ContentType = "text/javascript" }));

    /// <summary>A field by the words above it; of several alike, the first.</summary>
    public Task TypeAsync(string label, string text) => Field(label).FillAsync(text);

    /// <summary>A figure and the unit beside it.</summary>
    public async Task TypeAsync(string label, string text, string unit)
    {
        await TypeAsync(label, text);
        await Page.GetByLabel($"Unit of: {label}", new() { Exact = true }).First.SelectOptionAsync(unit);
    }

    public Task<string> TypedAsync(string label) => Field(label).InputValueAsync();

    /// <summary>One of a few slabs, or one line of a list.</summary>
    public async Task ChooseAsync(string label, string option)
    {
        var group = Page.GetByRole(AriaRole.Group, new() { Name = label, Exact = true });
        if (await group.CountAsync() > 0)
        {
            await group.First.GetByLabel(option, new() { Exact = true }).First.CheckAsync();
        }
        else
        {
            await Field(label).SelectOptionAsync(new SelectOptionValue { Label = option });
        }
    }

    /// <summary>The culture whose line has these words.</summary>
    public Task ChooseCultureAsync(string words) => ChooseFirstAsync("Culture", words);

    /// <summary>In the first field of this label, the line that has these words.</summary>
    public async Task ChooseFirstAsync(string label, string words)
    {
        var group = Page.GetByRole(AriaRole.Group, new() { Name = label, Exact = true }).First;
        if (await group.CountAsync() > 0)
        {
            await group.Locator("label", new() { HasText = words }).Locator("input").CheckAsync();
        }
        else
        {
            var line = Field(label).Locator("option", new() { HasText = words });
            await Field(label).SelectOptionAsync((await line.First.GetAttributeAsync("value"))!);
        }
    }

    /// <summary>A line of the timeline is opened, and corrected or struck.</summary>
    public async Task ChangeAsync(string line, string verb)
    {
        await Line(line).Locator("summary").ClickAsync();
        await PressAsync(Line(line).GetByRole(AriaRole.Link, new() { Name = verb }));
    }

    public Task TickAsync(string label) => Field(label).CheckAsync();

    public Task UnfoldAsync(string words) =>
        Page.Locator("summary").Filter(new() { HasText = words }).First.ClickAsync();

    /// <summary>A slab or a link by the words it begins with; waits for the page it leads to.</summary>
    public Task PressAsync(string words) => PressAsync(Pressable(words));

    public async Task PressAsync(ILocator slab)
    {
        var loaded = new TaskCompletionSource();
        void Loaded(object? sender, IPage page) => loaded.TrySetResult();
        Page.Load += Loaded;
        await slab.ClickAsync();
        await loaded.Task.WaitAsync(TimeSpan.FromMilliseconds(Patience), TestContext.Current.CancellationToken);
        Page.Load -= Loaded;
    }

    /// <summary>What carries these words and can be pressed; its second line, the last value, may follow.</summary>
    public ILocator Pressable(string words)
    {
        var beginning = new Regex($"^{Regex.Escape(words)}($|[^a-z])", RegexOptions.None, TimeSpan.FromSeconds(1));
        return Main.GetByRole(AriaRole.Button, new() { NameRegex = beginning })
            .Or(Main.GetByRole(AriaRole.Link, new() { NameRegex = beginning }))
            .First;
    }

    /// <summary>The page, as it is read aloud: the words of its main part.</summary>
    public Task<string> ReadAsync() => Main.InnerTextAsync();

    public async Task SeesAsync(string words) =>
        await Assertions
            .Expect(Main)
            .ToContainTextAsync(
                words,
                new()
                {
                    IgnoreCase = true,
                    UseInnerText = true,
                    Timeout = Patience,
                }
            );

    public async Task SeesNotAsync(string words) =>
        await Assertions.Expect(Main).Not.ToContainTextAsync(words, new() { IgnoreCase = true, Timeout = Patience });

    /// <summary>A line of the timeline, or of one that is struck.</summary>
    public ILocator Line(string words) =>
        Page.Locator(".timeline li").Filter(new() { Has = Page.Locator(".what", new() { HasText = words }) }).First;

    /// <summary>Presses the slab; what can be waved through with a reason is.</summary>
    public async Task InsistAsync(string verb)
    {
        await PressAsync(verb);
        if (await Page.GetByLabel("Why it is all right", new() { Exact = true }).CountAsync() > 0)
        {
            await TypeAsync("Why it is all right", "Known, and watched");
            await PressAsync(verb);
        }
        else if (await Page.GetByText("It already happened", new() { Exact = true }).CountAsync() > 0)
        {
            await UnfoldAsync("It already happened");
            await TickAsync("It already happened. Log it as done anyway.");
            await TypeAsync("Why it was done", "As it is here");
            await PressAsync(verb);
        }
    }

    /// <summary>A picture for people to look at, when a folder for them is named.</summary>
    public Task ShotIfWantedAsync(string name, bool whole = true) =>
        Shots.AreWanted ? ShotAsync(name, whole) : Task.CompletedTask;

    public Task ShotAsync(string name, bool whole = true) =>
        Page.ScreenshotAsync(new() { Path = Path.Combine(Shots.Folder, name + ".png"), FullPage = whole });

    /// <summary>Something is broken on purpose: the browser may say so, in these words.</summary>
    public void Forgive(string words) => _forgiven = words;

    public async ValueTask DisposeAsync()
    {
        await _context.CloseAsync();
        Assert.DoesNotContain(
            _complaints,
            said => _forgiven is null || !said.Contains(_forgiven, StringComparison.Ordinal)
        );
    }

    public ILocator Field(string label) => Page.GetByLabel(label, new() { Exact = true }).First;

    private void Listen()
    {
        Page.PageError += (_, error) => _complaints.Add(error);
        Page.Console += (_, said) =>
        {
            // An answer of 4xx to a form is part of the talk, not a complaint.
            if (said.Type is "error" && !said.Text.Contains("status of 4", StringComparison.Ordinal))
            {
                _complaints.Add(said.Text);
            }
        };
        Page.Response += (_, reply) =>
        {
            if (reply.Status >= 500)
            {
                _complaints.Add($"{reply.Status} {reply.Url}");
            }
        };
    }
}

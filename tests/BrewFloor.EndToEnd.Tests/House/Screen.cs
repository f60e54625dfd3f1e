using Microsoft.Playwright;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What somebody holds in the hand or sits at.</summary>
public sealed record Screen(int Width, int Height, bool HasTouch)
{
    public static readonly Screen Phone = new(390, 844, HasTouch: true);
    public static readonly Screen SmallPhone = new(360, 740, HasTouch: true);
    public static readonly Screen Desk = new(1280, 800, HasTouch: false);

    /// <summary>Switched off, as in a hardened browser, or lost on the way.</summary>
    public bool HasScript { get; init; } = true;

    /// <summary>light, dark, sunlight; null: as the device has it.</summary>
    public string? Theme { get; init; }

    /// <summary>Dots in one px of the page; a printer has two or more.</summary>
    public float Dots { get; init; } = 1;

    /// <summary>What its browser asks for.</summary>
    public string Language { get; init; } = "en-GB";

    public BrowserNewContextOptions Options(string address) =>
        new()
        {
            BaseURL = address,
            IgnoreHTTPSErrors = true, // nobody vouches for the certificate of a test
            ViewportSize = new() { Width = Width, Height = Height },
            HasTouch = HasTouch,
            DeviceScaleFactor = Dots,
            JavaScriptEnabled = HasScript,
            Locale = Language,
            TimezoneId = "Europe/Berlin",
            ReducedMotion = ReducedMotion.Reduce,
        };

    public override string ToString() =>
        $"{Width}x{Height}{(Theme is null ? "" : $" {Theme}")}{(HasScript ? "" : " without script")}";
}
